//! The public view of a season from one snapshot: what the pages for everybody are made from.

use league::points::Points;
use league::result::Slip;
use league::season::{NightPlan, RevealTime, WeekFacts, WeekPhase, next_to_come};
use league::standings::SeasonFacts;
use league::time::Instant;
use league::week::WeekNo;
use store::frozen_tables::FrozenTableMeta;
use store::games::GameRow;
use store::players::Player;
use store::seasons::Season;
use store::weeks::Week;

use crate::access::SeasonView;
use crate::loaded_season::LoadedSeason;
use crate::seasons::{VisibleScenario, visible_scenario};

/// A season as everybody may see it at one instant.
#[derive(Clone, Debug)]
pub struct Board {
    /// The season, with the version all of this belongs to.
    pub season: Season,
    /// Everybody who ever joined.
    pub players: Vec<Player>,
    /// The weeks in order.
    pub weeks: Vec<BoardWeek>,
    /// The games and byes of published rounds.
    pub games: Vec<GameRow>,
    /// When and why tables of closed weeks were frozen.
    pub frozen: Vec<FrozenTableMeta>,
    /// What the table is computed from.
    pub facts: SeasonFacts,
    /// The instant, by the league's one clock.
    pub now: Instant,
    /// The next instant at which the clock alone changes what may be seen.
    pub holds_until: Option<Instant>,
}

/// A week without what is still to be revealed.
#[derive(Clone, Debug)]
pub struct BoardWeek {
    pub week: WeekNo,
    pub cap: Points,
    pub phase: WeekPhase,
    /// Its instants, planned and happened.
    pub facts: WeekFacts,
    /// The nights, as they begin.
    pub nights: Vec<NightPlan>,
    /// What may be known of its scenario.
    pub scenario: Option<VisibleScenario>,
}

impl Board {
    /// What was read of a season, as everybody may see it.
    pub(crate) fn new(
        view: SeasonView,
        loaded: LoadedSeason,
        frozen: Vec<FrozenTableMeta>,
    ) -> Self {
        let now = loaded.now;
        let holds_until = next_moment(&loaded.weeks, &loaded.games, now);
        let weeks = loaded.weeks.into_iter();
        let weeks = weeks.map(|week| board_week(&view, week, now)).collect();
        Self {
            season: view.season,
            players: loaded.players,
            weeks,
            games: loaded.games,
            frozen,
            facts: loaded.facts,
            now,
            holds_until,
        }
    }
}

fn board_week(view: &SeasonView, week: Week, now: Instant) -> BoardWeek {
    let scenario = visible_scenario(view, &week, now);
    BoardWeek {
        week: week.week,
        cap: week.cap,
        phase: week.facts.phase(now),
        facts: week.facts,
        nights: week.nights,
        scenario,
    }
}

/// The first instant after `now` at which a phase begins, a scenario is revealed or silence confirms.
fn next_moment(weeks: &[Week], games: &[GameRow], now: Instant) -> Option<Instant> {
    let of_week = |week: &Week| {
        let reveals = [week.title_reveal, week.full_reveal];
        let reveals = reveals.into_iter().filter_map(RevealTime::instant);
        let phases = [week.facts.announce_at, week.facts.accepted_until()];
        phases.into_iter().chain(reveals)
    };
    let of_game = |game: &GameRow| match game.slip {
        Slip::Reported { confirm_due, .. } => Some(confirm_due),
        _ => None,
    };
    let moments = weeks.iter().flat_map(of_week);
    let moments = moments.chain(games.iter().filter_map(of_game));
    next_to_come(moments, now)
}
