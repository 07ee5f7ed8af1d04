//! Building the games of a round from its proposal: nights by name, and the attacker first.

use league::ids::{GameId, PlayerId};
use league::pairing::round::roles::attacker_first;
use league::result::Slip;
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
    let roles = sheet.map(|sheet| sheet.terms().roles);
    let ranked = table_before(week, loaded);
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
        let (first, second) = attacker_first(roles, proposed, &ranked);
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

/// The players in the order of the table before the week, for scenarios in which the standing decides who
/// attacks.
fn table_before(week: &Week, loaded: &LoadedSeason) -> Vec<PlayerId> {
    let last = week.week.previous();
    let rows = last.map(|last| table(&loaded.facts, last).rows);
    let rows = rows.into_iter().flatten();
    rows.map(|row| row.player).collect()
}
