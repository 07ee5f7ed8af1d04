//! Scoring a typed result on the week's scenario sheet with the opened lists.

use document::results::{ImpossibleDocument, TypedResultDocument};
use league::ids::PlayerId;
use league::points::Points;
use league::result::{ArmyPoints, CountFault, Outcome, TypedResult};
use league::scenario::ScenarioSheet;
use league::season::{Revealed, revealed_at};
use league::side::PerSide;
use league::time::Instant;
use messages::results;
use store::Conn;
use store::seasons::Season;
use store::weeks::Week;

use crate::loaded_season::parse_sheet;
use crate::{Fault, Reason, Refusal};

pub(super) struct ScoringInputs {
    pub sheet: ScenarioSheet,
    pub armies: ArmyPoints,
}

/// # Errors
/// [`Reason::WeekState`] for counts while the scenario is not fully revealed to everybody: they and
/// their faults tell what is in it. [`Reason::ImpossibleScore`] with every count that cannot be, its limit and
/// its actual value, and the reasons of [`parse_result`] and [`load_scoring_inputs`].
pub(super) async fn score_result(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    players: PerSide<PlayerId>,
    typed: TypedResultDocument,
    now: Instant,
) -> Result<Outcome, Refusal> {
    let typed = parse_result(typed)?;
    let known = revealed_at(week.title_reveal, week.full_reveal, &week.facts, now);
    if has_counts(&typed) && known != Revealed::Full {
        let message = results::week_scenario_not_revealed();
        return Err(Refusal::rule(Reason::WeekState, message));
    }
    let ScoringInputs { sheet, armies } = load_scoring_inputs(conn, season, week, players).await?;
    typed.outcome(&sheet, &armies).map_err(|impossible| {
        let faults = impossible.iter().map(fault).collect();
        Refusal::faults(
            Reason::ImpossibleScore,
            results::impossible_counts(),
            faults,
        )
    })
}

fn has_counts(typed: &TypedResult) -> bool {
    match typed {
        TypedResult::Played(_) => true,
        TypedResult::Conceded { counts, .. } => counts.is_some(),
        TypedResult::NoShow { .. } | TypedResult::DoubleLoss | TypedResult::Void => false,
    }
}

/// # Errors
/// [`Reason::Validation`] for a document that is none.
pub(super) fn parse_result(typed: TypedResultDocument) -> Result<TypedResult, Refusal> {
    TypedResult::try_from(typed).map_err(|faults| {
        let faults = faults.into_iter().map(Fault::from).collect();
        Refusal::faults(Reason::Validation, results::report_faults(), faults)
    })
}

/// # Errors
/// [`Reason::WeekState`] without a sheet.
pub(super) async fn load_scoring_inputs(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    players: PerSide<PlayerId>,
) -> Result<ScoringInputs, Refusal> {
    let sheet = parse_sheet(week)?
        .ok_or_else(|| Refusal::rule(Reason::WeekState, results::scenario_missing()))?;
    let armies = ArmyPoints {
        lists: PerSide {
            first: find_list_points(conn, season, week, players.first).await?,
            second: find_list_points(conn, season, week, players.second).await?,
        },
        cap: week.cap,
    };
    Ok(ScoringInputs { sheet, armies })
}

/// The points of a player's opened list; the cap where none was handed in.
async fn find_list_points(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    player: PlayerId,
) -> Result<Points, Refusal> {
    let list = store::lists::find(conn, season.key().week(week.week), player).await?;
    let sealed = list.and_then(|list| list.sealed);
    Ok(sealed.map_or(week.cap, |sealed| Points::new(sealed.points)))
}

fn fault(found: &CountFault) -> Fault {
    let place = ImpossibleDocument::from(found);
    let pointer = format!("/counts{}", place.pointer);
    let fault = Fault::new(&place.code, pointer, found.message());
    match (place.limit, place.actual) {
        (Some(limit), Some(actual)) => fault.with(limit, actual),
        _ => fault,
    }
}
