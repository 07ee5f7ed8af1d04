//! Building the games of a round from its proposal: nights by name, and the attacker first.

use league::ids::{GameId, PlayerId};
use league::result::Slip;
use league::scenario::{AttackerChoice, ScenarioRoles, ScenarioSheet};
use league::standings::table;
use store::games::{GameRow, MeetingRow};
use store::rounds::RoundRow;
use store::weeks::Week;
use uuid::Uuid;

use crate::Refusal;
use crate::loaded_season::{LoadedSeason, parse_sheet};

/// # Errors
/// [`Refusal::Internal`] when the proposal names a night that the week does not have.
pub(super) fn build_games(
    round: &RoundRow,
    week: &Week,
    loaded: &LoadedSeason,
) -> Result<Vec<GameRow>, Refusal> {
    let sheet = parse_sheet(week)?;
    let ranks = Ranks::new(week, loaded);
    let game = |first, meeting| GameRow {
        id: GameId(Uuid::now_v7()),
        round: round.id,
        week: week.week,
        round_no: round.number,
        first,
        meeting,
        slip: Slip::Awaited,
        version: 1,
    };
    let mut games = Vec::new();
    for paired in &round.proposal.games {
        let proposed = (PlayerId(paired.attacker), PlayerId(paired.defender));
        let (first, second) = order(sheet.as_ref(), proposed, &ranks);
        let night = week.nights.get(usize::from(paired.night));
        let night = night.map(|night| night.key.clone()).ok_or_else(|| {
            Refusal::Internal(format!("round {} names night {}", round.id, paired.night))
        })?;
        games.push(game(
            first,
            Some(MeetingRow {
                second,
                night,
                table: paired.table,
            }),
        ));
    }
    games.extend(
        round
            .proposal
            .byes
            .iter()
            .map(|&player| game(PlayerId(player), None)),
    );
    Ok(games)
}

/// Places in the table before the week, for scenarios in which the standing decides who attacks.
struct Ranks(Vec<PlayerId>);

impl Ranks {
    fn new(week: &Week, loaded: &LoadedSeason) -> Self {
        let rows = week
            .week
            .previous()
            .map(|last| table(&loaded.facts, last).rows);
        Self(
            rows.unwrap_or_default()
                .into_iter()
                .map(|row| row.player)
                .collect(),
        )
    }

    fn is_above(&self, a: PlayerId, b: PlayerId) -> Option<bool> {
        let place = |player| self.0.iter().position(|&known| known == player);
        Some(place(a)? < place(b)?)
    }
}

fn order(
    sheet: Option<&ScenarioSheet>,
    (first, second): (PlayerId, PlayerId),
    ranks: &Ranks,
) -> (PlayerId, PlayerId) {
    let swap = match sheet.map(|sheet| sheet.terms().roles) {
        Some(ScenarioRoles::AttackAndDefence {
            attacker: AttackerChoice::LowerStanding,
            ..
        }) => ranks.is_above(first, second).unwrap_or(false),
        Some(ScenarioRoles::AttackAndDefence {
            attacker: AttackerChoice::HigherStanding,
            ..
        }) => ranks.is_above(second, first).unwrap_or(false),
        _ => false,
    };
    if swap {
        (second, first)
    } else {
        (first, second)
    }
}
