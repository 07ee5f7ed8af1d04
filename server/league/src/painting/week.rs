//! A player's painted week: what checked claims give for one week's list.

use num_rational::Ratio;

use crate::ledger::LineSource;
use crate::lists::EntryKey;
use crate::points::Points;
use crate::week::WeekNo;

use super::{ClaimState, FirstPainted, PaintedWeek, Painting, PaintingLog, UnitOnList, UnitRecord};
use crate::ids::PlayerId;

/// One entry of the opened list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListedUnit {
    /// The unit of the player's collection.
    pub unit: EntryKey,
    /// What the entry costs.
    pub points: Points,
    /// Models fielded.
    pub models: u32,
}

/// One entry of the opened list with what the log shows of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaintedUnit {
    /// The unit of the player's collection.
    pub unit: EntryKey,
    /// Its models and points.
    pub on_list: UnitOnList,
    /// Painted points that it adds to the list's.
    pub counted: Ratio<u64>,
}

/// What every entry of `player`'s opened list adds to the painted share of the week.
pub fn painted_units(
    painting: &Painting,
    player: PlayerId,
    week: WeekNo,
    list: &[ListedUnit],
    log: &PaintingLog,
) -> Vec<PaintedUnit> {
    let own = log.for_player(player, week);
    let units = list.iter().map(|unit| {
        let record = own.record_of(painting, &unit.unit);
        let on_list = painting.on_list(unit.points, unit.models, record.as_ref());
        PaintedUnit {
            unit: unit.unit.clone(),
            on_list,
            counted: on_list.counted(painting.terms().counting),
        }
    });
    units.collect()
}

/// The painting of `player` in `week`, from the opened list and the log of the season.
pub fn painted_week(
    painting: &Painting,
    player: PlayerId,
    week: WeekNo,
    list: &[ListedUnit],
    log: &PaintingLog,
) -> PaintedWeek {
    let own = log.for_player(player, week);
    let records: Vec<Option<UnitRecord>> = list
        .iter()
        .map(|unit| own.record_of(painting, &unit.unit))
        .collect();
    let units: Vec<UnitOnList> = list
        .iter()
        .zip(&records)
        .map(|(unit, record)| painting.on_list(unit.points, unit.models, record.as_ref()))
        .collect();
    let is_new = |record: &Option<UnitRecord>| {
        record
            .as_ref()
            .is_some_and(|record| record.painted_in == Some(FirstPainted::In(week)))
    };
    let new = || {
        list.iter()
            .zip(&records)
            .filter(|(_, record)| is_new(record))
    };
    let source = own
        .claims
        .iter()
        .rev()
        .find(|claim| claim.made.week == week && matches!(claim.state, ClaimState::Verified { .. }))
        .map_or(LineSource::Rule, |claim| LineSource::Claim(claim.made.id));
    PaintedWeek {
        player,
        week,
        share: painting.share_of(&units),
        new_units: u32::try_from(new().count()).unwrap_or(u32::MAX),
        new_points: new().map(|(unit, _)| unit.points).sum(),
        source,
        version: 1,
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::catalogue::key::{FactionKey, UnitKey};
    use crate::ids::{AccountId, ClaimId};
    use crate::painting::{
        BroughtUnit, Checker, Evidence, ModelStages, NewClaim, PaintCounting, PaintingClaim,
        PaintingTerms, Stage,
    };
    use crate::share::Share;

    fn painting() -> Painting {
        Painting::build(PaintingTerms {
            painted_from: Stage::Finished,
            counting: PaintCounting::ByModel,
            bonuses: Vec::new(),
            checked_by: vec![Checker::Opponent],
        })
        .unwrap()
    }

    fn claim(number: u128, week: u8, unit: &str, finished: u32, verified: bool) -> PaintingClaim {
        let at = "2026-10-13T20:00:00Z".parse().unwrap();
        let by = AccountId(Uuid::from_u128(99));
        PaintingClaim {
            made: NewClaim {
                id: ClaimId(Uuid::from_u128(number)),
                player: PlayerId(Uuid::from_u128(1)),
                week: WeekNo::new(week).unwrap(),
                unit: EntryKey::new(unit).unwrap(),
                stages: ModelStages::new([10 - finished, 0, 0, finished]).unwrap(),
                evidence: Evidence::AtTable,
                at,
            },
            state: if verified {
                ClaimState::Verified {
                    checker: Checker::Opponent,
                    by,
                    at,
                }
            } else {
                ClaimState::Open
            },
        }
    }

    fn list() -> Vec<ListedUnit> {
        let unit = |key: &str, points| ListedUnit {
            unit: EntryKey::new(key).unwrap(),
            points: Points::new(points),
            models: 10,
        };
        vec![unit("pole-hands", 60), unit("runners", 40)]
    }

    const PLAYER: PlayerId = PlayerId(Uuid::from_u128(1));

    fn week(number: u8, brought: &[BroughtUnit], claims: &[PaintingClaim]) -> PaintedWeek {
        let log = PaintingLog {
            brought: brought.to_vec(),
            claims: claims.to_vec(),
        };
        let week = WeekNo::new(number).unwrap();
        painted_week(&painting(), PLAYER, week, &list(), &log)
    }

    #[test]
    fn only_what_was_checked_counts_and_it_stays_painted() {
        let claims = [
            claim(1, 1, "pole-hands", 6, true),
            claim(2, 2, "pole-hands", 10, true),
            claim(3, 2, "runners", 10, false),
        ];
        let first = week(1, &[], &claims);
        assert_eq!((first.share, first.new_units), (Share::percent(36), 0));
        let second = week(2, &[], &claims);
        assert_eq!((second.share, second.new_units), (Share::percent(60), 1));
        assert_eq!(second.new_points, Points::new(60));
        assert_eq!(second.source, LineSource::Claim(claims[1].made.id));
        let third = week(3, &[], &claims);
        assert_eq!((third.share, third.new_units), (Share::percent(60), 0));
        assert_eq!(third.source, LineSource::Rule);
    }

    #[test]
    fn the_entries_add_up_to_the_painted_share() {
        let log = PaintingLog {
            brought: Vec::new(),
            claims: vec![
                claim(1, 1, "pole-hands", 7, true),
                claim(2, 1, "runners", 3, true),
            ],
        };
        let units = painted_units(&painting(), PLAYER, WeekNo::FIRST, &list(), &log);
        let counted: Vec<_> = units.iter().map(|unit| unit.counted).collect();
        assert_eq!(counted, [Ratio::from(42), Ratio::from(12)]);
        let week = painted_week(&painting(), PLAYER, WeekNo::FIRST, &list(), &log);
        assert_eq!(week.share, Share::percent(54));
    }

    #[test]
    fn what_is_brought_painted_into_the_season_counts_from_the_first_week_and_is_never_new() {
        let brought = [BroughtUnit {
            player: PLAYER,
            entry: EntryKey::new("pole-hands").unwrap(),
            faction: FactionKey::new("sodwether-moot").unwrap(),
            unit: UnitKey::new("pole-hands").unwrap(),
            models: 10,
            stages: ModelStages::new([0, 0, 0, 10]).ok(),
        }];
        let first = week(1, &brought, &[]);
        assert_eq!((first.share, first.new_units), (Share::percent(60), 0));
        assert_eq!(first.source, LineSource::Rule);
        let grown = [
            claim(1, 2, "pole-hands", 8, true),
            claim(2, 3, "pole-hands", 10, true),
            claim(3, 3, "runners", 10, true),
        ];
        let third = week(3, &brought, &grown);
        assert_eq!(
            third.new_points,
            Points::new(40),
            "only the runners are new"
        );
    }
}
