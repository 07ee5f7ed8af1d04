//! What a transaction says of itself in the end: a change of a season, or an entry for officers alone.

use document::trail::TrailAct;
use league::ids::{ClubId, SeasonId};
use league::keys::SeasonKey;
use league::time::Instant;
use league::week::WeekNo;
use store::seasons::Season;
use store::trail::TrailAudience;

use crate::Actor;
use crate::loaded_season::LoadedSeason;

/// Something of which a reader of the season may see a difference.
pub(crate) struct SeasonChange {
    pub season: SeasonKey,
    pub act: TrailAct,
    /// Who did it; `None` of what the clock does.
    pub actor: Option<Actor>,
    pub at: Instant,
    /// The first closed week whose table may be another now.
    pub changes_closed_week_from: Option<WeekNo>,
    /// Who may read its entry in the trail.
    pub audience: TrailAudience,
    /// A second entry, for officers alone.
    pub officers_act: Option<TrailAct>,
    /// The season, locked, and its facts as the change leaves them, where the use case has them.
    pub loaded: Option<(Season, LoadedSeason)>,
}

impl SeasonChange {
    /// A change whose entry everybody may read who may see the season.
    pub fn new(
        season: SeasonKey,
        actor: impl Into<Option<Actor>>,
        at: Instant,
        act: TrailAct,
    ) -> Self {
        Self {
            season,
            act,
            actor: actor.into(),
            at,
            changes_closed_week_from: None,
            audience: TrailAudience::Everyone,
            officers_act: None,
            loaded: None,
        }
    }
}

/// A trail entry of a club or a season that officers alone may read.
pub(crate) struct OfficersEntry {
    pub club: ClubId,
    /// `None` of what concerns the club as a whole.
    pub season: Option<SeasonId>,
    pub actor: Actor,
    pub at: Instant,
    pub act: TrailAct,
}

impl OfficersEntry {
    pub fn in_club(club: ClubId, actor: Actor, at: Instant, act: TrailAct) -> Self {
        Self {
            club,
            season: None,
            actor,
            at,
            act,
        }
    }

    pub fn in_season(key: SeasonKey, actor: Actor, at: Instant, act: TrailAct) -> Self {
        Self {
            season: Some(key.season),
            ..Self::in_club(key.club, actor, at, act)
        }
    }
}
