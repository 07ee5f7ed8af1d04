//! From facts to ledger lines, and to the sums that follow from them.

use crate::ids::PlayerId;
use crate::ledger::{Kind, Line, Reason, Source};
use crate::points::{LeaguePoints, Points};
use crate::result::Outcome;
use crate::scoring::{Bye, LateJoiner};
use crate::side::{Both, Side};
use crate::week::WeekNo;

use super::board::{Roster, Round, RoundKind, Rounds, round_of};
use super::facts::{Fixture, GameFact, SeasonFacts};
use super::table::{KindSums, WeekTotal};

/// All credits as of a week.
pub(super) struct Credits<'f> {
    facts: &'f SeasonFacts,
    roster: &'f Roster<'f>,
    as_of: WeekNo,
    /// For each player, every week from the first.
    pub(super) weeks: Vec<Vec<WeekTotal>>,
    pub(super) sums: Vec<KindSums>,
    pub(super) rounds: Rounds,
    /// The lines of each player; `None` when only sums are wanted.
    pub(super) lines: Option<Vec<Vec<Line>>>,
    bonuses: Vec<Vec<Bonuses>>,
}

#[derive(Clone, Copy, Default)]
struct Bonuses {
    attended: bool,
    painting: LeaguePoints,
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

impl<'f> Credits<'f> {
    pub(super) fn new(
        facts: &'f SeasonFacts,
        roster: &'f Roster<'f>,
        as_of: WeekNo,
        with_lines: bool,
    ) -> Self {
        let players = roster.players.len();
        let weeks: Vec<_> = (1..=as_of.number()).filter_map(WeekNo::new).collect();
        let totals = weeks.iter().map(|&week| WeekTotal::new(week)).collect();
        let room = || Vec::with_capacity(weeks.len() * 3);
        let mut credits = Self {
            facts,
            roster,
            as_of,
            sums: vec![KindSums::default(); players],
            rounds: Rounds::new(players, as_of),
            lines: with_lines.then(|| (0..players).map(|_| room()).collect()),
            bonuses: vec![vec![Bonuses::default(); weeks.len()]; players],
            weeks: vec![totals; players],
        };
        credits.games();
        credits.byes();
        credits.rounds.fill(&facts.games, roster, as_of);
        credits.bonuses();
        credits.late_lists();
        credits.adjustments();
        credits.weeks_before_joining();
        credits.weeks_beyond_the_best();
        credits
    }

    fn credit(&mut self, place: usize, credit: Credit) {
        let (Some(player), Some(sums), Some(weeks)) = (
            self.roster.players.get(place),
            self.sums.get_mut(place),
            self.weeks.get_mut(place),
        ) else {
            return;
        };
        sums.add(credit.kind, credit.amount);
        if credit.kind != Kind::DroppedWeek
            && let Some(total) = weeks.get_mut(usize::from(credit.week.number() - 1))
        {
            total.points += credit.amount;
        }
        if let Some(lines) = self.lines.as_mut().and_then(|lines| lines.get_mut(place)) {
            lines.push(Line {
                player: player.player,
                week: credit.week,
                kind: credit.kind,
                amount: credit.amount,
                reason: credit.reason,
                source: credit.source,
                version: credit.version,
            });
        }
    }

    fn weighted(&self, amount: LeaguePoints, week: WeekNo) -> LeaguePoints {
        LeaguePoints::new(amount.get().saturating_mul(self.facts.scoring.weight(week)))
    }

    fn games(&mut self) {
        let (facts, as_of) = (self.facts, self.as_of);
        for game in facts.games.iter().filter(|game| game.week <= as_of) {
            if let Fixture::Game {
                players,
                harder,
                outcome: Some(outcome),
                ruling,
            } = &game.fixture
            {
                let source = ruling.map_or(Source::Game(game.game), Source::Ruling);
                self.game(game, *players, outcome, *harder, source);
            }
        }
    }

    fn game(
        &mut self,
        game: &GameFact,
        players: Both<PlayerId>,
        outcome: &Outcome,
        harder: Option<Side>,
        source: Source,
    ) {
        let cap = self
            .facts
            .caps
            .get(&game.week)
            .copied()
            .unwrap_or(Points::ZERO);
        let (Some(awards), Some(first), Some(second)) = (
            self.facts.scoring.award(outcome, cap),
            self.roster.place(players.first),
            self.roster.place(players.second),
        ) else {
            return;
        };
        let places = Both::new(first, second);
        let amounts = Both::each(|side| self.weighted(awards[side].amount, game.week));
        for (side, award) in [(Side::First, awards.first), (Side::Second, awards.second)] {
            let (place, opponent) = (places[side], places[side.other()]);
            let round = round_of(
                self.facts,
                game,
                outcome,
                side,
                opponent,
                amounts[side],
                harder,
            );
            if let Some(round) = round {
                self.rounds.push(place, round);
            }
            if came(outcome, side) {
                self.attend(place, game.week);
            }
            self.credit(
                place,
                Credit {
                    week: game.week,
                    kind: Kind::Game,
                    amount: amounts[side],
                    reason: award.reason,
                    source,
                    version: game.version,
                },
            );
        }
    }

    fn attend(&mut self, place: usize, week: WeekNo) {
        let weeks = self.bonuses.get_mut(place);
        if let Some(week) = weeks.and_then(|w| w.get_mut(usize::from(week.number() - 1))) {
            week.attended = true;
        }
    }

    fn byes(&mut self) {
        let (facts, as_of) = (self.facts, self.as_of);
        for game in facts.games.iter().filter(|game| game.week <= as_of) {
            let Fixture::Bye(player) = game.fixture else {
                continue;
            };
            let Some(place) = self.roster.place(player) else {
                continue;
            };
            let (amount, reason) = self.bye_of(place);
            let amount = self.weighted(amount, game.week);
            self.rounds.push(
                place,
                Round {
                    week: game.week,
                    result: 2,
                    league_points: amount,
                    kind: RoundKind::Bye,
                },
            );
            self.credit(
                place,
                Credit {
                    week: game.week,
                    kind: Kind::Bye,
                    amount,
                    reason,
                    source: Source::Game(game.game),
                    version: game.version,
                },
            );
        }
    }

    fn bye_of(&self, place: usize) -> (LeaguePoints, Reason) {
        match self.facts.scoring.terms().bye {
            Bye::Fixed(value) => (value, Reason::Bye),
            Bye::Win => (self.facts.scoring.win(), Reason::Bye),
            Bye::OwnAverage { floor } => {
                let rounds = self
                    .rounds
                    .of_player
                    .get(place)
                    .map_or(&[][..], Vec::as_slice);
                let played = rounds.iter().filter(|round| round.kind.is_played());
                let (mut sum, mut games) = (0, 0_u32);
                for round in played {
                    sum += round.league_points.get() / self.facts.scoring.weight(round.week);
                    games += 1;
                }
                let average = i32::try_from(games).ok().and_then(|n| sum.checked_div(n));
                let average = LeaguePoints::new(average.unwrap_or(0));
                (average.max(floor), Reason::ByeByAverage { games })
            }
        }
    }

    fn bonuses(&mut self) {
        let (facts, as_of) = (self.facts, self.as_of);
        for painted in facts.painted.iter().filter(|painted| painted.week <= as_of) {
            let Some(place) = self.roster.place(painted.player) else {
                continue;
            };
            for bonus in &facts.painting.terms().bonuses {
                let Some((amount, reason)) = bonus.earned(painted) else {
                    continue;
                };
                self.credit(
                    place,
                    Credit {
                        week: painted.week,
                        kind: Kind::Painting,
                        amount,
                        reason,
                        source: painted.source,
                        version: painted.version,
                    },
                );
                let weeks = self.bonuses.get_mut(place);
                let week = usize::from(painted.week.number() - 1);
                if let Some(bonuses) = weeks.and_then(|weeks| weeks.get_mut(week)) {
                    bonuses.painting += amount;
                }
            }
        }
        for place in 0..self.roster.players.len() {
            for week in (1..=self.as_of.number()).filter_map(WeekNo::new) {
                self.attendance_and_caps(place, week);
            }
        }
    }

    fn attendance_and_caps(&mut self, place: usize, week: WeekNo) {
        let weeks = self.bonuses.get(place);
        let Some(&bonuses) = weeks.and_then(|weeks| weeks.get(usize::from(week.number() - 1)))
        else {
            return;
        };
        let scoring = &self.facts.scoring;
        let terms = scoring.terms();
        let attendance = if bonuses.attended {
            terms.attendance
        } else {
            LeaguePoints::ZERO
        };
        let by_rule = |kind, amount, reason| Credit {
            week,
            kind,
            amount,
            reason,
            source: Source::Rule,
            version: 1,
        };
        if attendance > LeaguePoints::ZERO {
            self.credit(
                place,
                by_rule(Kind::Attendance, attendance, Reason::Attended),
            );
        }
        let mut painting = bonuses.painting;
        let painting_cap = terms.painting_cap.map(|share| scoring.cap_in_points(share));
        if let Some(limit) = painting_cap.filter(|limit| painting > *limit) {
            let reason = Reason::AboveBonusCap {
                limit,
                earned: painting,
            };
            self.credit(place, by_rule(Kind::BonusCap, limit - painting, reason));
            painting = limit;
        }
        let earned = painting + attendance;
        let bonus_cap = terms.bonus_cap.map(|share| scoring.cap_in_points(share));
        if let Some(limit) = bonus_cap.filter(|limit| earned > *limit) {
            let reason = Reason::AboveBonusCap { limit, earned };
            self.credit(place, by_rule(Kind::BonusCap, limit - earned, reason));
        }
    }

    fn late_lists(&mut self) {
        let (facts, as_of) = (self.facts, self.as_of);
        for late in facts.late_lists.iter().filter(|late| late.week <= as_of) {
            let penalty = facts.scoring.late_penalty(late.seconds);
            let place = self.roster.place(late.player);
            if let Some(place) = place.filter(|_| penalty > LeaguePoints::ZERO) {
                self.credit(
                    place,
                    Credit {
                        week: late.week,
                        kind: Kind::LateList,
                        amount: -penalty,
                        reason: Reason::Late {
                            seconds: late.seconds,
                        },
                        source: Source::Rule,
                        version: 1,
                    },
                );
            }
        }
    }

    fn adjustments(&mut self) {
        let (facts, as_of) = (self.facts, self.as_of);
        let known = facts.adjustments.iter().filter(|ruled| ruled.week <= as_of);
        for ruled in known {
            if let Some(place) = self.roster.place(ruled.player) {
                self.credit(
                    place,
                    Credit {
                        week: ruled.week,
                        kind: Kind::Ruling,
                        amount: ruled.amount,
                        reason: Reason::Ruled(ruled.reason.clone()),
                        source: Source::Ruling(ruled.ruling),
                        version: ruled.version,
                    },
                );
            }
        }
    }

    fn weeks_before_joining(&mut self) {
        let late_joiner = self.facts.scoring.terms().late_joiner;
        for week in (1..self.as_of.number()).filter_map(WeekNo::new) {
            let joining = |place: &usize| {
                self.roster
                    .players
                    .get(*place)
                    .is_some_and(|player| player.joined > week)
            };
            let joining: Vec<usize> = (0..self.roster.players.len()).filter(joining).collect();
            if joining.is_empty() {
                continue;
            }
            let (amount, reason) = match late_joiner {
                LateJoiner::Nothing => return,
                LateJoiner::Fixed(value) => (value, Reason::MissedWeek),
                LateJoiner::MedianLess(less) => {
                    let median = self.median_of(week);
                    let amount = (median - less).max(LeaguePoints::ZERO);
                    (amount, Reason::MedianOfWeek { median, less })
                }
            };
            for place in joining {
                self.credit(
                    place,
                    Credit {
                        week,
                        kind: Kind::CatchUp,
                        amount,
                        reason: reason.clone(),
                        source: Source::Rule,
                        version: 1,
                    },
                );
            }
        }
    }

    /// The lower median of what the week gave to those who took part.
    fn median_of(&self, week: WeekNo) -> LeaguePoints {
        let players = self.roster.players.iter().zip(&self.weeks);
        let there = players.filter(|(player, _)| player.takes_part_in(week));
        let points = there.filter_map(|(_, weeks)| weeks.get(usize::from(week.number() - 1)));
        let mut points: Vec<_> = points.map(|total| total.points).collect();
        points.sort_unstable();
        let middle = points.len().saturating_sub(1) / 2;
        points.get(middle).copied().unwrap_or(LeaguePoints::ZERO)
    }

    fn weeks_beyond_the_best(&mut self) {
        let Some(best) = self.facts.scoring.terms().best_weeks else {
            return;
        };
        let surplus = usize::from(self.as_of.number().saturating_sub(best));
        if surplus == 0 {
            return;
        }
        for place in 0..self.roster.players.len() {
            let mut worst: Vec<WeekTotal> = self.weeks.get(place).cloned().unwrap_or_default();
            worst.sort_by_key(|total| total.points);
            for dropped in worst.iter().take(surplus) {
                let weeks = self.weeks.get_mut(place);
                let index = usize::from(dropped.week.number() - 1);
                if let Some(total) = weeks.and_then(|weeks| weeks.get_mut(index)) {
                    total.counts = false;
                }
                self.credit(
                    place,
                    Credit {
                        week: dropped.week,
                        kind: Kind::DroppedWeek,
                        amount: -dropped.points,
                        reason: Reason::NotAmongBest { best },
                        source: Source::Rule,
                        version: 1,
                    },
                );
            }
        }
    }
}

fn came(outcome: &Outcome, side: Side) -> bool {
    match outcome {
        Outcome::Played(_) | Outcome::Conceded { .. } => true,
        Outcome::NoShow { absent, .. } => *absent != side,
        Outcome::DoubleLoss | Outcome::Void => false,
    }
}
