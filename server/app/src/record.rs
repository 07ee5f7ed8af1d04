//! The trail entry and, where a reader may see a difference, the season's new version.

use league::ids::{ClubId, SeasonId};
use league::time::Instant;
use serde_json::Value;
use store::Conn;
use store::trail::{Event, OpenTo};

use crate::standings::freeze::freeze_rows;
use crate::{Actor, Desk, Refusal};

/// Where and when something happens, and who does it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Scene {
    club: ClubId,
    season: Option<SeasonId>,
    at: Instant,
    actor: Option<Actor>,
}

impl Scene {
    /// Something that `actor` does in a club.
    pub fn in_club(club: ClubId, actor: Actor, at: Instant) -> Self {
        Self {
            club,
            season: None,
            at,
            actor: Some(actor),
        }
    }

    /// Something that `actor` does in the season of this address.
    pub fn in_season((club, season): (ClubId, SeasonId), actor: Actor, at: Instant) -> Self {
        Self {
            club,
            season: Some(season),
            at,
            actor: Some(actor),
        }
    }

    /// Something that the clock does in a season.
    pub fn by_clock(club: ClubId, season: SeasonId, at: Instant) -> Self {
        Self {
            club,
            season: Some(season),
            at,
            actor: None,
        }
    }

    /// Writes what happened into the trail for officers. Call it last in a transaction.
    pub async fn tell_officers(
        self,
        conn: &mut Conn,
        act: &'static str,
        facts: Value,
    ) -> Result<(), Refusal> {
        self.append(conn, act, facts, OpenTo::Officers).await
    }

    /// Keeps the tables that it changed, raises the season's version and writes what happened into the
    /// trail for everyone who may see the season. Call it last in a transaction.
    pub async fn tell_everyone(
        self,
        desk: &Desk,
        conn: &mut Conn,
        act: &'static str,
        facts: Value,
    ) -> Result<(), Refusal> {
        if let Some(season) = self.season {
            freeze_rows(desk, conn, self.club, season, act, self.at).await?;
            store::seasons::touch(conn, self.club, season, self.at).await?;
        }
        self.append(conn, act, facts, OpenTo::Everyone).await
    }

    async fn append(
        self,
        conn: &mut Conn,
        act: &'static str,
        facts: Value,
        open_to: OpenTo,
    ) -> Result<(), Refusal> {
        let event = Event {
            club: self.club,
            season: self.season,
            at: self.at,
            actor: self.actor.map(|actor| actor.account),
            act,
            facts,
            open_to,
        };
        Ok(store::trail::append(conn, event).await?)
    }
}
