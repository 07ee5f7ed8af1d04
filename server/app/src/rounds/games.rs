//! The games that a proposal becomes: nights by name, and the side that the scenario names first.

use league::ids::{GameId, PlayerId};
use league::result::Slip;
use league::scenario::{AttackerIs, Roles, ScenarioSheet};
use league::standings::table;
use store::games::{Game, Meeting};
use store::rounds::Round;
use store::weeks::Week;
use uuid::Uuid;

use crate::Refusal;
use crate::facts::{Loaded, sheet};

/// # Errors
/// [`Refusal::Broken`] when the proposal names a night that the week does not have.
pub(super) fn games(round: &Round, week: &Week, loaded: &Loaded) -> Result<Vec<Game>, Refusal> {
    let sheet = sheet(week)?;
    let ranks = Ranks::new(week, loaded);
    let game = |first, meeting| Game {
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
            Refusal::Broken(format!("round {} names night {}", round.id, paired.night))
        })?;
        games.push(game(
            first,
            Some(Meeting {
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
    fn new(week: &Week, loaded: &Loaded) -> Self {
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
        Some(Roles::AttackAndDefence {
            attacker: AttackerIs::LowerStanding,
            ..
        }) => ranks.is_above(first, second).unwrap_or(false),
        Some(Roles::AttackAndDefence {
            attacker: AttackerIs::HigherStanding,
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
