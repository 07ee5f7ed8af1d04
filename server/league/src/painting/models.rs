//! The painted models of a player's collection, as the list rules need them.

use super::{Painting, PaintingLog};
use crate::ids::PlayerId;
use crate::lists::PaintedModels;
use crate::week::WeekNo;

/// Painted models by unit of `player`. Only what was verified counts, and nothing that was claimed
/// for a later week than `week`.
pub fn painted_models(
    painting: &Painting,
    player: PlayerId,
    week: WeekNo,
    log: &PaintingLog,
) -> PaintedModels {
    let own = log.for_player(player, week);
    let brought = own.brought.iter().map(|unit| &unit.entry);
    let claimed = own.claims.iter().map(|claim| &claim.made.unit);
    let painted = brought.chain(claimed).filter_map(|unit| {
        let record = own.record_of(painting, unit)?;
        let models = record.stages.at_least(painting.terms().painted_from);
        Some((unit.clone(), models))
    });
    painted.collect()
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::ids::{AccountId, ClaimId};
    use crate::lists::EntryKey;
    use crate::painting::{Checker, ClaimState, Evidence, ModelStages, NewClaim, PaintingClaim};

    fn claim(week: u8, unit: &str, finished: u32, verified: bool) -> PaintingClaim {
        let at = "2026-10-13T20:00:00Z".parse().unwrap();
        let by = AccountId(Uuid::from_u128(99));
        let checker = Checker::Opponent;
        PaintingClaim {
            made: NewClaim {
                id: ClaimId(Uuid::from_u128(week.into())),
                player: PlayerId(Uuid::from_u128(1)),
                week: WeekNo::new(week).unwrap(),
                unit: EntryKey::new(unit).unwrap(),
                stages: ModelStages::new([10 - finished, 0, 0, finished]).unwrap(),
                evidence: Evidence::AtTable,
                at,
            },
            state: if verified {
                ClaimState::Verified { checker, by, at }
            } else {
                ClaimState::Open
            },
        }
    }

    #[test]
    fn only_verified_claims_up_to_the_week_count_and_the_newest_of_a_unit_stands() {
        let claims = vec![
            claim(1, "a", 4, true),
            claim(2, "a", 6, true),
            claim(2, "b", 9, false),
            claim(3, "a", 10, true),
        ];
        let week = WeekNo::new(2).unwrap();
        let log = PaintingLog {
            claims,
            ..PaintingLog::default()
        };
        let player = PlayerId(Uuid::from_u128(1));
        let painted = painted_models(&Painting::without_bonus(), player, week, &log);
        assert_eq!(painted, [(EntryKey::new("a").unwrap(), 6)].into());
    }
}
