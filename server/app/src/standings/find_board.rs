//! The board on the wall: everything that everybody may see of a public season, from one snapshot.

use futures_util::TryFutureExt;
use futures_util::future::try_join;
use league::ids::{ClubId, SeasonId};
use league::points::Points;
use league::result::Slip;
use league::season::{NightPlan, Phase, Reveal, WeekFacts};
use league::standings::SeasonFacts;
use league::time::Instant;
use league::week::WeekNo;
use store::frozen_tables::Frozen;
use store::games::Game;
use store::players::Player;
use store::seasons::Season;
use store::weeks::Week;

use crate::facts::{self, Loaded};
use crate::seasons::ScenarioSeen;
use crate::seasons::find_scenario::seen;
use crate::seasons::look::{Look, look};
use crate::{Desk, Refusal};

/// A season as it may be known to everybody at one instant.
#[derive(Clone, Debug)]
pub struct Board {
    /// The season, with the version all of this belongs to.
    pub season: Season,
    /// Everybody who ever joined.
    pub players: Vec<Player>,
    /// The weeks in order.
    pub weeks: Vec<BoardWeek>,
    /// The games and byes of published rounds.
    pub games: Vec<Game>,
    /// When and why tables of closed weeks were frozen.
    pub frozen: Vec<Frozen>,
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
    /// Its number.
    pub week: WeekNo,
    /// The points cap.
    pub cap: Points,
    /// Where it stands.
    pub phase: Phase,
    /// Its instants, planned and happened.
    pub facts: WeekFacts,
    /// The nights, as they begin.
    pub nights: Vec<NightPlan>,
    /// What may be known of its scenario.
    pub scenario: Option<ScenarioSeen>,
}

impl Board {
    /// What was read of a season, as everybody may see it.
    pub(crate) fn new(look: Look, loaded: Loaded, frozen: Vec<Frozen>) -> Self {
        let now = loaded.now;
        let holds_until = next_moment(&loaded.weeks, &loaded.games, now);
        let weeks = loaded.weeks.into_iter();
        let weeks = weeks.map(|week| board_week(&look, week, now)).collect();
        Self {
            season: look.season,
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

/// # Errors
/// [`Refusal::NotFound`] for a season that is not open to everybody.
pub async fn find_board(desk: &Desk, club: ClubId, season: SeasonId) -> Result<Board, Refusal> {
    desk.store
        .read(async |conn| {
            let look = look(conn, None, club, season).await?;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &look.season, now);
            let frozen = store::frozen_tables::list(conn, club, season).err_into();
            let (loaded, frozen) = try_join(loaded, frozen).await?;
            Ok(Board::new(look, loaded, frozen))
        })
        .await
}

fn board_week(look: &Look, week: Week, now: Instant) -> BoardWeek {
    let scenario = seen(look, &week, now);
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
fn next_moment(weeks: &[Week], games: &[Game], now: Instant) -> Option<Instant> {
    let of_week = |week: &Week| {
        let reveals = [week.title_reveal, week.full_reveal];
        let reveals = reveals.into_iter().filter_map(|reveal| match reveal {
            Reveal::At(instant) => Some(instant),
            Reveal::Announcement | Reveal::ListsOpened => None,
        });
        let phases = [week.facts.announce_at, week.facts.accepted_until()];
        phases.into_iter().chain(reveals)
    };
    let of_game = |game: &Game| match game.slip {
        Slip::Reported { confirm_due, .. } => Some(confirm_due),
        _ => None,
    };
    let moments = weeks.iter().flat_map(of_week);
    let moments = moments.chain(games.iter().filter_map(of_game));
    moments.filter(|&moment| moment > now).min()
}
