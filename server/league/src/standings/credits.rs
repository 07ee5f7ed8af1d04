//! From facts to ledger lines, and to the sums that follow from them.

mod absences;
mod best_weeks;
mod bonuses;
mod byes;
mod catch_up;
mod games;
mod lists;
mod rulings;

use crate::ledger::{Kind, Line, Reason, Source};
use crate::points::LeaguePoints;
use crate::week::WeekNo;

use super::rounds::{Round, add_missed};
use super::season::Season;
use super::table::{KindSums, WeekTotal};

use bonuses::Bonuses;

/// All credits as of a week, player by player.
pub(super) struct Credits<'s> {
    season: &'s Season<'s>,
    as_of: WeekNo,
    /// Every week from the first.
    pub(super) weeks: Vec<Vec<WeekTotal>>,
    pub(super) sums: Vec<KindSums>,
    pub(super) rounds: Vec<Vec<Round>>,
    /// `None` when only sums are wanted.
    pub(super) lines: Option<Vec<Vec<Line>>>,
    bonuses: Vec<Vec<Bonuses>>,
}

/// A line that still lacks its player.
struct Credit {
    week: WeekNo,
    kind: Kind,
    amount: LeaguePoints,
    reason: Reason,
    source: Source,
    version: u32,
}

impl Credit {
    /// By the season's rules alone.
    const fn by_rule(week: WeekNo, kind: Kind, amount: LeaguePoints, reason: Reason) -> Self {
        Self {
            week,
            kind,
            amount,
            reason,
            source: Source::Rule,
            version: 1,
        }
    }
}

impl<'s> Credits<'s> {
    pub(super) fn new(season: &'s Season<'s>, as_of: WeekNo, with_lines: bool) -> Self {
        let players = season.players.len();
        let weeks: Vec<_> = (1..=as_of.number()).filter_map(WeekNo::new).collect();
        let totals: Vec<_> = weeks.iter().map(|&week| WeekTotal::new(week)).collect();
        let rounds = || Vec::with_capacity(weeks.len());
        let lines = || Vec::with_capacity(weeks.len() * 4);
        let mut credits = Self {
            season,
            as_of,
            sums: vec![KindSums::default(); players],
            rounds: (0..players).map(|_| rounds()).collect(),
            lines: with_lines.then(|| (0..players).map(|_| lines()).collect()),
            bonuses: vec![vec![Bonuses::default(); weeks.len()]; players],
            weeks: vec![totals; players],
        };
        credits.games();
        credits.byes();
        credits.absences();
        add_missed(&mut credits.rounds, season, as_of);
        credits.painting();
        credits.attendance_and_caps();
        credits.late_lists();
        credits.rulings();
        credits.weeks_before_joining();
        credits.weeks_beyond_the_best();
        credits
    }

    fn credit(&mut self, player: usize, credit: Credit) {
        let (Some(fact), Some(sums), Some(weeks)) = (
            self.season.players.get(player),
            self.sums.get_mut(player),
            self.weeks.get_mut(player),
        ) else {
            return;
        };
        sums.add(credit.kind, credit.amount);
        if credit.kind != Kind::DroppedWeek
            && let Some(total) = weeks.get_mut(place_of(credit.week))
        {
            total.points += credit.amount;
        }
        if let Some(lines) = self.lines.as_mut().and_then(|lines| lines.get_mut(player)) {
            lines.push(Line {
                player: fact.player,
                week: credit.week,
                kind: credit.kind,
                amount: credit.amount,
                reason: credit.reason,
                source: credit.source,
                version: credit.version,
            });
        }
    }

    /// The amount with the factor of its week.
    fn weighted(&self, amount: LeaguePoints, week: WeekNo) -> LeaguePoints {
        self.season.facts.scoring.weighted(amount, week)
    }

    fn all_weeks(&self) -> impl Iterator<Item = WeekNo> + use<> {
        (1..=self.as_of.number()).filter_map(WeekNo::new)
    }
}

/// The place of a week in a list that starts with the first.
fn place_of(week: WeekNo) -> usize {
    usize::from(week.number() - 1)
}
