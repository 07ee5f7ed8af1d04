//! The games of a week as rows, by night and table.

use std::borrow::Cow;

use app::results::GameRow;
use league::result::{Outcome, Slip};

use crate::pages::frame::urls;
use crate::pages::season::context::SeasonContext;
use messages::Texts;

/// A game or a bye.
pub struct PairingRow {
    /// Its page; a bye has none.
    pub link: Option<String>,
    /// Short name of the night.
    pub night: String,
    /// Number of the table.
    pub table: u16,
    /// The side named first.
    pub first: String,
    /// The side named second, unless it is a bye.
    pub second: Option<String>,
    /// Where the slip stands.
    pub state: Cow<'static, str>,
    /// Whether somebody must act.
    pub open: bool,
    /// The result in short.
    pub result: String,
    /// Whether the reader plays in it.
    pub mine: bool,
}

/// The games of a week in the order of nights and tables, byes last.
pub fn pairings(context: &SeasonContext, t: Texts, games: &[GameRow]) -> Vec<PairingRow> {
    let mut rows: Vec<PairingRow> = games.iter().map(|game| pairing(context, t, game)).collect();
    rows.sort_by(|one, other| {
        let key = |row: &PairingRow| (row.second.is_none(), row.night.clone(), row.table);
        key(one).cmp(&key(other))
    });
    rows
}

/// One game or bye.
pub fn pairing(context: &SeasonContext, t: Texts, game: &GameRow) -> PairingRow {
    let own = context.own.as_ref().map(|own| own.id);
    let meeting = game.meeting.as_ref();
    let second = meeting.map(|meeting| meeting.second);
    PairingRow {
        link: meeting.map(|_| urls::game(context.season.key().game(game.id))),
        night: meeting
            .map(|meeting| meeting.night.clone())
            .unwrap_or_default(),
        table: meeting.map(|meeting| meeting.table).unwrap_or_default(),
        first: context.handle(game.first).to_owned(),
        second: second.map(|player| context.handle(player).to_owned()),
        state: if meeting.is_some() {
            slip_label(t, &game.slip)
        } else {
            t.line_bye()
        },
        open: meeting.is_some() && is_open(&game.slip),
        result: settled_outcome(&game.slip)
            .map(|outcome| outcome_text(t, outcome))
            .unwrap_or_default(),
        mine: own.is_some() && (own == Some(game.first) || own == second),
    }
}

/// Whether a slip still waits for somebody.
fn is_open(slip: &Slip) -> bool {
    !matches!(slip, Slip::Confirmed { .. } | Slip::Ruled(_))
}

/// The outcome that stands, or that is reported so far.
pub fn settled_outcome(slip: &Slip) -> Option<&Outcome> {
    match slip {
        Slip::Awaited => None,
        Slip::Reported { report, .. }
        | Slip::Disputed { report, .. }
        | Slip::Confirmed { report, .. } => Some(&report.outcome),
        Slip::Ruled(ruling) => Some(&ruling.outcome),
    }
}

/// Where a slip stands.
pub fn slip_label(t: Texts, slip: &Slip) -> Cow<'static, str> {
    match slip {
        Slip::Awaited => t.slip_awaited(),
        Slip::Reported { .. } => t.slip_reported(),
        Slip::Disputed { .. } => t.slip_disputed(),
        Slip::Confirmed { .. } => t.slip_confirmed(),
        Slip::Ruled(_) => t.slip_ruled(),
    }
}

/// An outcome in short.
pub fn outcome_text(t: Texts, outcome: &Outcome) -> String {
    match (outcome, outcome.score()) {
        (Outcome::Played(_), Some(score)) => {
            format!("{} : {}", score.total.first, score.total.second)
        }
        (Outcome::Conceded { .. }, Some(score)) => {
            format!(
                "{} : {}, {}",
                score.total.first,
                score.total.second,
                t.outcome_conceded()
            )
        }
        (Outcome::NoShow { .. }, _) => t.outcome_no_show().into_owned(),
        (Outcome::DoubleLoss, _) => t.outcome_double_loss().into_owned(),
        (Outcome::Void, _) => t.outcome_void().into_owned(),
        _ => t.outcome_conceded().into_owned(),
    }
}
