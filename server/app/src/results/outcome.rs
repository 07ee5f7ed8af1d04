//! From what was typed to an outcome: scored on the week's sheet with the opened lists.

use document::result::{ImpossibleDocument, TypedResultDocument};
use league::ids::PlayerId;
use league::points::Points;
use league::result::{Armies, Outcome, Typed};
use league::side::Both;
use store::Conn;
use store::games::Game;
use store::seasons::Season;

use crate::facts::sheet;
use crate::{Fault, Reason, Refusal};

/// # Errors
/// [`Reason::ImpossibleScore`] with every count that cannot be, its limit and its actual value;
/// [`Reason::Validation`] for a document that is none; [`Reason::WeekState`] without a sheet.
pub(super) async fn outcome(
    conn: &mut Conn,
    season: &Season,
    game: &Game,
    players: Both<PlayerId>,
    typed: TypedResultDocument,
) -> Result<Outcome, Refusal> {
    let typed = Typed::try_from(typed).map_err(|faults| {
        let faults = faults.into_iter().map(Fault::from).collect();
        Refusal::faults(Reason::Validation, "The report has faults.", faults)
    })?;
    let week = store::weeks::find(conn, season.club, season.id, game.week).await?;
    let sheet = sheet(&week)?.ok_or_else(|| {
        Refusal::rule(
            Reason::WeekState,
            "The week has no scenario sheet to score by.",
        )
    })?;
    let armies = Armies {
        lists: Both {
            first: points(conn, season, game, players.first, week.cap).await?,
            second: points(conn, season, game, players.second, week.cap).await?,
        },
        cap: week.cap,
    };
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

/// The points of a player's opened list; the cap where none was handed in.
async fn points(
    conn: &mut Conn,
    season: &Season,
    game: &Game,
    player: PlayerId,
    cap: Points,
) -> Result<Points, Refusal> {
    let list = store::lists::find(conn, season.club, season.id, game.week, player).await?;
    let sealed = list.and_then(|list| list.sealed);
    Ok(sealed.map_or(cap, |sealed| Points::new(sealed.points)))
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
