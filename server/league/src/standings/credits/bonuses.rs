//! Painting, attendance, and the caps that keep them below a win.

use crate::ledger::{Kind, Reason};
use crate::points::LeaguePoints;
use crate::week::WeekNo;

use super::{Credit, Credits, place_of};

/// Bonuses of one week.
#[derive(Clone, Copy, Default)]
pub(super) struct Bonuses {
    attended: bool,
    painting: LeaguePoints,
}

impl Credits<'_> {
    pub(super) fn attend(&mut self, player: usize, week: WeekNo) {
        if let Some(bonuses) = self.bonuses_of(player, week) {
            bonuses.attended = true;
        }
    }

    fn bonuses_of(&mut self, player: usize, week: WeekNo) -> Option<&mut Bonuses> {
        self.bonuses.get_mut(player)?.get_mut(place_of(week))
    }

    pub(super) fn painting(&mut self) {
        let (season, as_of) = (self.season, self.as_of);
        for painted in season
            .painted
            .iter()
            .filter(|painted| painted.fact.week <= as_of)
        {
            for bonus in &season.facts.painting.terms().bonuses {
                let Some((amount, reason)) = bonus.earned(painted.fact) else {
                    continue;
                };
                if let Some(bonuses) = self.bonuses_of(painted.player, painted.fact.week) {
                    bonuses.painting += amount;
                }
                let credit = Credit {
                    week: painted.fact.week,
                    kind: Kind::Painting,
                    amount,
                    reason,
                    source: painted.fact.source,
                    version: painted.fact.version,
                };
                self.credit(painted.player, credit);
            }
        }
    }

    pub(super) fn attendance_and_caps(&mut self) {
        let scoring = &self.season.facts.scoring;
        let terms = scoring.terms();
        let painting_cap = terms.painting_cap.map(|share| scoring.cap_in_points(share));
        let bonus_cap = terms.bonus_cap.map(|share| scoring.cap_in_points(share));
        for player in 0..self.season.players.len() {
            for week in self.all_weeks() {
                let Some(&mut bonuses) = self.bonuses_of(player, week) else {
                    continue;
                };
                let attendance = match bonuses.attended {
                    true => terms.attendance,
                    false => LeaguePoints::ZERO,
                };
                if attendance > LeaguePoints::ZERO {
                    let reason = Reason::Attended;
                    let credit = Credit::by_rule(week, Kind::Attendance, attendance, reason);
                    self.credit(player, credit);
                }
                let painting = self.cap(player, week, bonuses.painting, painting_cap);
                self.cap(player, week, painting + attendance, bonus_cap);
            }
        }
    }

    /// Takes off what exceeds the cap and returns what is left.
    fn cap(
        &mut self,
        player: usize,
        week: WeekNo,
        earned: LeaguePoints,
        limit: Option<LeaguePoints>,
    ) -> LeaguePoints {
        let Some(limit) = limit.filter(|limit| earned > *limit) else {
            return earned;
        };
        let reason = Reason::AboveBonusCap { limit, earned };
        let credit = Credit::by_rule(week, Kind::BonusCap, limit - earned, reason);
        self.credit(player, credit);
        limit
    }
}
