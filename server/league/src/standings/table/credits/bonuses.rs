//! Bonuses: painting, attendance, and the caps that keep them below a win.

use crate::ledger::{LineKind, LineReason, LineSource};
use crate::points::LeaguePoints;
use crate::scoring::Scoring;
use crate::week::WeekNo;

use super::{Credit, Credits};

/// The caps on bonus points of a week.
pub(super) struct BonusCaps {
    painting: Option<LeaguePoints>,
    together: Option<LeaguePoints>,
}

impl BonusCaps {
    pub(super) fn new(scoring: &Scoring) -> Self {
        let terms = scoring.terms();
        Self {
            painting: terms.painting_cap.map(|cap| scoring.cap_in_points(cap)),
            together: terms.bonus_cap.map(|cap| scoring.cap_in_points(cap)),
        }
    }
}

impl Credits<'_> {
    pub(super) fn bonuses(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        let attendance = self.attendance(player, week, credit);
        let painting = self.painting(player, week, credit);
        let painting = cap(week, painting, self.caps.painting, credit);
        cap(week, painting + attendance, self.caps.together, credit);
    }

    fn attendance(
        &self,
        player: usize,
        week: WeekNo,
        credit: &mut impl FnMut(Credit),
    ) -> LeaguePoints {
        let mut games = self.season.games.get(player, week).iter();
        let came = games.find(|game| game.counted.as_ref().is_some_and(|counted| counted.came));
        let amount = self.season.facts.scoring.terms().attendance;
        let Some(game) = came.filter(|_| amount > LeaguePoints::ZERO) else {
            return LeaguePoints::ZERO;
        };
        credit(Credit {
            week,
            kind: LineKind::Attendance,
            amount,
            reason: LineReason::Attended,
            source: LineSource::Game(game.fact.game),
            version: game.fact.version,
        });
        amount
    }

    fn painting(
        &self,
        player: usize,
        week: WeekNo,
        credit: &mut impl FnMut(Credit),
    ) -> LeaguePoints {
        let mut all = LeaguePoints::ZERO;
        for painted in self.season.painted.get(player, week) {
            for bonus in &self.season.facts.painting.terms().bonuses {
                let Some((amount, reason)) = bonus.earned(painted) else {
                    continue;
                };
                all += amount;
                credit(Credit {
                    week,
                    kind: LineKind::Painting,
                    amount,
                    reason,
                    source: painted.source,
                    version: painted.version,
                });
            }
        }
        all
    }
}

/// Takes off what exceeds the cap and returns what is left.
fn cap(
    week: WeekNo,
    earned: LeaguePoints,
    limit: Option<LeaguePoints>,
    credit: &mut impl FnMut(Credit),
) -> LeaguePoints {
    let Some(limit) = limit.filter(|limit| earned > *limit) else {
        return earned;
    };
    let reason = LineReason::AboveBonusCap { limit, earned };
    credit(Credit::by_rule(
        week,
        LineKind::BonusCap,
        limit - earned,
        reason,
    ));
    limit
}
