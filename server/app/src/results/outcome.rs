//! From what was typed to an outcome: scored on the week's sheet with the opened lists.

use document::result::{ImpossibleDocument, TypedResultDocument};
use league::ids::PlayerId;
use league::points::Points;
use league::result::{Armies, Outcome, Typed};
use league::scenario::ScenarioSheet;
use league::season::{Revealed, revealed};
use league::side::Both;
use store::Conn;
use store::games::Game;
use store::seasons::Season;
use store::weeks::Week;

use crate::facts::sheet;
use crate::{Fault, Reason, Refusal};

/// What a game is scored by.
pub(super) struct Ground {
    pub sheet: ScenarioSheet,
    pub armies: Armies,
}

/// # Errors
/// [`Reason::WeekState`] for counts while the scenario is not fully revealed to everybody: they and
/// their faults tell what is in it. [`Reason::ImpossibleScore`] with every count that cannot be, its limit and
/// its actual value, and the reasons of [`read`] and [`ground`].
pub(super) async fn outcome(
    conn: &mut Conn,
    season: &Season,
    game: &Game,
    players: Both<PlayerId>,
    typed: TypedResultDocument,
) -> Result<Outcome, Refusal> {
    let typed = read(typed)?;
    let week = store::weeks::find(conn, season.club, season.id, game.week).await?;
    let now = store::clock::now(conn).await?;
    let known = revealed(week.title_reveal, week.full_reveal, &week.facts, now);
    if counted(&typed) && known != Revealed::Full {
        let detail = "The scenario of the week is not revealed yet.";
        return Err(Refusal::rule(Reason::WeekState, detail));
    }
    let Ground { sheet, armies } = ground(conn, season, &week, players).await?;
    typed.outcome(&sheet, &armies).map_err(|impossible| {
        let faults = impossible
            .iter()
            .map(|found| fault(&found.into()))
            .collect();
        Refusal::faults(
            Reason::ImpossibleScore,
            "Some counts cannot happen.",
            faults,
        )
    })
}

fn counted(typed: &Typed) -> bool {
    match typed {
        Typed::Played(_) => true,
        Typed::Conceded { counts, .. } => counts.is_some(),
        Typed::NoShow { .. } | Typed::DoubleLoss | Typed::Void => false,
    }
}

/// # Errors
/// [`Reason::Validation`] for a document that is none.
pub(super) fn read(typed: TypedResultDocument) -> Result<Typed, Refusal> {
    Typed::try_from(typed).map_err(|faults| {
        let faults = faults.into_iter().map(Fault::from).collect();
        Refusal::faults(Reason::Validation, "The report has faults.", faults)
    })
}

/// # Errors
/// [`Reason::WeekState`] without a sheet.
pub(super) async fn ground(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    players: Both<PlayerId>,
) -> Result<Ground, Refusal> {
    let sheet = sheet(week)?.ok_or_else(|| {
        Refusal::rule(
            Reason::WeekState,
            "The week has no scenario sheet to score by.",
        )
    })?;
    let armies = Armies {
        lists: Both {
            first: points(conn, season, week, players.first).await?,
            second: points(conn, season, week, players.second).await?,
        },
        cap: week.cap,
    };
    Ok(Ground { sheet, armies })
}

/// The points of a player's opened list; the cap where none was handed in.
async fn points(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    player: PlayerId,
) -> Result<Points, Refusal> {
    let list = store::lists::find(conn, season.club, season.id, week.week, player).await?;
    let sealed = list.and_then(|list| list.sealed);
    Ok(sealed.map_or(week.cap, |sealed| Points::new(sealed.points)))
}

fn fault(found: &ImpossibleDocument) -> Fault {
    let fault = Fault::new(
        &found.code,
        format!("/counts{}", found.pointer),
        &found.detail,
    );
    match (found.limit, found.actual) {
        (Some(limit), Some(actual)) => fault.with(limit, actual),
        _ => fault,
    }
}
