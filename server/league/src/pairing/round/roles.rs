//! Who attacks in a game of a round, where the scenario lets the standing decide.

use crate::ids::PlayerId;
use crate::scenario::{AttackerChoice, ScenarioRoles};

/// The two players of a game, attacker first. `proposed` is in the order of the pairing; `table` holds the
/// players in the order of the table before the week. Who is in no table stays as paired.
pub fn attacker_first(
    roles: Option<ScenarioRoles>,
    proposed: (PlayerId, PlayerId),
    table: &[PlayerId],
) -> (PlayerId, PlayerId) {
    let (first, second) = proposed;
    let place = |player| table.iter().position(|&known| known == player);
    let is_above = |a, b| place(a).zip(place(b)).is_some_and(|(a, b)| a < b);
    let attacker = match roles {
        Some(ScenarioRoles::AttackAndDefence { attacker, .. }) => attacker,
        Some(ScenarioRoles::Symmetric) | None => AttackerChoice::Paired,
    };
    let swap = match attacker {
        AttackerChoice::LowerStanding => is_above(first, second),
        AttackerChoice::HigherStanding => is_above(second, first),
        AttackerChoice::Paired => false,
    };
    if swap { (second, first) } else { proposed }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::share::Share;

    #[test]
    fn the_lower_or_the_higher_standing_attacks_where_the_scenario_says_so() {
        let [leader, last, newcomer] = [1, 2, 3].map(|number| PlayerId(Uuid::from_u128(number)));
        let table = [leader, last];
        let roles = |attacker| {
            Some(ScenarioRoles::AttackAndDefence {
                attacker_fields: Share::ALL,
                defender_fields: Share::ALL,
                attacker,
                harder: None,
            })
        };
        for proposed in [(leader, last), (last, leader)] {
            let first = |roles| attacker_first(roles, proposed, &table).0;
            assert_eq!(first(roles(AttackerChoice::LowerStanding)), last);
            assert_eq!(first(roles(AttackerChoice::HigherStanding)), leader);
            assert_eq!(first(roles(AttackerChoice::Paired)), proposed.0);
            assert_eq!(first(Some(ScenarioRoles::Symmetric)), proposed.0);
        }
        let proposed = (leader, newcomer);
        let kept = attacker_first(roles(AttackerChoice::LowerStanding), proposed, &table);
        assert_eq!(kept, proposed);
    }
}
