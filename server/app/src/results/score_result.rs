//! Scoring a typed result on the week's scenario sheet with the opened lists.

use document::results::{ImpossibleDocument, TypedResultDocument};
use league::ids::PlayerId;
use league::points::Points;
use league::result::{ArmyPoints, Outcome, TypedResult};
use league::scenario::ScenarioSheet;
use league::season::{Revealed, revealed_at};
use league::side::PerSide;
use league::time::Instant;
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
        let detail = "The scenario of the week is not revealed yet.";
        return Err(Refusal::rule(Reason::WeekState, detail));
    }
    let ScoringInputs { sheet, armies } = load_scoring_inputs(conn, season, week, players).await?;
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
        Refusal::faults(Reason::Validation, "The report has faults.", faults)
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
    let sheet = parse_sheet(week)?.ok_or_else(|| {
        Refusal::rule(
            Reason::WeekState,
            "The week has no scenario sheet to score by.",
        )
    })?;
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
