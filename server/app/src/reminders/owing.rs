//! Who owes a list or a result in a week.

use league::ids::PlayerId;
use league::result::Slip;
use league::season::owes_list;
use league::time::Instant;
use league::week::WeekNo;
use messages::seasons;
use store::Conn;
use store::games::GameRow;
use store::seasons::Season;
use store::weeks::Week;

use crate::{Reason, Refusal};

/// What people are reminded of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReminderKind {
    /// A list that is not handed in.
    Lists,
    /// A game that is over and not reported.
    Results,
}

impl ReminderKind {
    pub const ALL: [Self; 2] = [Self::Lists, Self::Results];

    /// The word it is kept and sent under.
    pub fn word(self) -> &'static str {
        match self {
            Self::Lists => "lists",
            Self::Results => "results",
        }
    }
}

/// Everybody who owes it now, in the order of their handles; nobody where the time for it has not come
/// or is over.
pub(super) async fn find_owing(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    about: ReminderKind,
    now: Instant,
) -> Result<Vec<PlayerId>, Refusal> {
    match about {
        ReminderKind::Lists => without_list(conn, season, week, now).await,
        ReminderKind::Results => without_result(conn, season, week, now).await,
    }
}

async fn without_list(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    now: Instant,
) -> Result<Vec<PlayerId>, Refusal> {
    if !owes_list(&week.facts, now) {
        return Ok(Vec::new());
    }
    let lists = store::lists::list_by_week(conn, season.key().week(week.week)).await?;
    let players = store::players::list(conn, season.key()).await?;
    let sealed = |player: PlayerId| {
        let mut own = lists.iter().filter(|list| list.player == player);
        own.any(|list| list.sealed.is_some())
    };
    let playing = players.iter().filter(|player| player.plays_in(week.week));
    let playing = playing.map(|player| player.id);
    Ok(playing.filter(|player| !sealed(*player)).collect())
}

async fn without_result(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    now: Instant,
) -> Result<Vec<PlayerId>, Refusal> {
    let games = store::games::list(conn, season.key(), Some(week.week)).await?;
    let late = games.iter().filter(|game| is_late(game, week, now));
    let both = late.flat_map(|game| {
        let second = game.meeting.as_ref().map(|meeting| meeting.second);
        std::iter::once(game.first).chain(second)
    });
    Ok(both.collect())
}

/// Whether the night of a game has begun and nobody has said how it went.
fn is_late(game: &GameRow, week: &Week, now: Instant) -> bool {
    let night = game.meeting.as_ref().and_then(|meeting| {
        let mut nights = week.nights.iter();
        nights.find(|night| night.key == meeting.night)
    });
    matches!(game.slip, Slip::Awaited) && night.is_some_and(|night| night.has_begun(now))
}

pub(super) fn nobody_owes(week: WeekNo, about: ReminderKind) -> Refusal {
    let what = match about {
        ReminderKind::Lists => "lists",
        ReminderKind::Results => "results",
    };
    let message = seasons::nobody_owes(what, week.number());
    Refusal::rule(Reason::WeekState, message)
}
