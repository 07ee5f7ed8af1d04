//! Weeks before a player joined.

use crate::ledger::{Kind, Reason};
use crate::points::LeaguePoints;
use crate::scoring::LateJoiner;
use crate::week::WeekNo;

use super::{Credit, Credits, place_of};

impl Credits<'_> {
    pub(super) fn weeks_before_joining(&mut self) {
        let (season, as_of) = (self.season, self.as_of);
        for week in self.all_weeks().filter(|week| *week < as_of) {
            let joins_later =
                |player: &usize| season.has_row(*player, as_of) && !season.has_row(*player, week);
            let joining: Vec<usize> = (0..season.players.len()).filter(joins_later).collect();
            if joining.is_empty() {
                continue;
            }
            let (amount, reason) = match season.facts.scoring.terms().late_joiner {
                LateJoiner::Nothing => return,
                LateJoiner::Fixed(value) => (value, Reason::MissedWeek),
                LateJoiner::MedianLess(less) => {
                    let median = self.median_of(week);
                    let amount = (median - less).max(LeaguePoints::ZERO);
                    (amount, Reason::MedianOfWeek { median, less })
                }
            };
            for player in joining {
                let credit = Credit::by_rule(week, Kind::CatchUp, amount, reason.clone());
                self.credit(player, credit);
            }
        }
    }

    /// The lower median of what the week gave to those who took part.
    fn median_of(&self, week: WeekNo) -> LeaguePoints {
        let players = self.season.players.iter().zip(&self.weeks);
        let there = players.filter(|(player, _)| player.takes_part_in(week));
        let points = there.filter_map(|(_, weeks)| weeks.get(place_of(week)));
        let mut points: Vec<_> = points.map(|total| total.points).collect();
        points.sort_unstable();
        let middle = points.len().saturating_sub(1) / 2;
        points.get(middle).copied().unwrap_or(LeaguePoints::ZERO)
    }
}
