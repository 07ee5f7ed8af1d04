//! The trail entry and, where a reader may see a difference, the season's new version.

use futures_util::TryFutureExt;
use futures_util::future::try_join3;
use league::ids::{ClubId, SeasonId};
use league::time::Instant;
use league::week::WeekNo;
use serde_json::Value;
use store::Conn;
use store::seasons::Season;
use store::trail::{TrailAudience, TrailEvent};

use crate::access::SeasonView;
use crate::standings::Board;
use crate::standings::freeze::freeze;
use crate::{Actor, App, Refusal};

/// Where and when something happens, and who does it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Scene {
    club: ClubId,
    season: Option<SeasonId>,
    at: Instant,
    actor: Option<Actor>,
    /// The first closed week whose table may have changed.
    over: Option<WeekNo>,
}

impl Scene {
    /// Something that `actor` does in a club.
    pub fn in_club(club: ClubId, actor: Actor, at: Instant) -> Self {
        Self {
            club,
            season: None,
            at,
            actor: Some(actor),
            over: None,
        }
    }

    /// Something that `actor` does in the season of this address.
    pub fn in_season((club, season): (ClubId, SeasonId), actor: Actor, at: Instant) -> Self {
        Self {
            club,
            season: Some(season),
            at,
            actor: Some(actor),
            over: None,
        }
    }

    /// Something that the clock does in a season.
    pub fn by_clock(club: ClubId, season: SeasonId, at: Instant) -> Self {
        Self {
            club,
            season: Some(season),
            at,
            actor: None,
            over: None,
        }
    }

    /// The same, which may change the tables of closed weeks, too, from this week on.
    pub fn changing(self, week: WeekNo) -> Self {
        Self {
            over: Some(week),
            ..self
        }
    }

    /// Writes what happened into the trail for officers. Call it last in a transaction.
    pub async fn tell_officers(
        self,
        conn: &mut Conn,
        act: &'static str,
        facts: Value,
    ) -> Result<(), Refusal> {
        self.append(conn, act, facts, TrailAudience::Officers).await
    }

    /// Keeps the tables that it changed, raises the season's version and writes what happened into the
    /// trail for everyone who may see the season. Call it last in a transaction.
    pub async fn tell_everyone(
        self,
        app: &App,
        conn: &mut Conn,
        act: &'static str,
        facts: Value,
    ) -> Result<(), Refusal> {
        let Some(season) = self.season else {
            return self.append(conn, act, facts, TrailAudience::Everyone).await;
        };
        let key = (self.club, season);
        let running = freeze(app, conn, key, self.over, act, self.at).await?;
        let (version, frozen, ()) = try_join3(
            store::seasons::raise_version(conn, self.club, season, self.at).err_into(),
            store::frozen_tables::list(conn, self.club, season).err_into(),
            self.append(conn, act, facts, TrailAudience::Everyone),
        )
        .await?;
        if let Some((season, loaded)) = running {
            let changed_at = self.at;
            let season = Season {
                version,
                changed_at,
                ..season
            };
            if let Ok(view) = SeasonView::public(season) {
                app.handed.once_committed(Board::new(view, loaded, frozen));
            }
        }
        Ok(())
    }

    async fn append(
        self,
        conn: &Conn,
        act: &'static str,
        facts: Value,
        open_to: TrailAudience,
    ) -> Result<(), Refusal> {
        let event = TrailEvent {
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
