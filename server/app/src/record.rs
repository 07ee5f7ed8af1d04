//! The trail entry and, where a reader may see a difference, the season's new version.

use league::ids::{ClubId, SeasonId};
use league::time::Instant;
use serde_json::Value;
use store::Conn;
use store::trail::{Event, OpenTo};

use crate::{Actor, Refusal};

/// Where and when something happens, and who does it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Scene {
    pub club: ClubId,
    pub season: Option<SeasonId>,
    pub at: Instant,
    /// Nobody when the clock does it.
    pub actor: Option<Actor>,
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

    /// Writes what happened into the trail for officers. Call it last in a transaction.
    pub async fn tell_officers(
        self,
        conn: &mut Conn,
        act: &'static str,
        facts: Value,
    ) -> Result<(), Refusal> {
        self.tell(conn, act, facts, OpenTo::Officers).await
    }

    async fn tell(
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
