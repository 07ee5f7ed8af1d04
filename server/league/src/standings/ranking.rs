//! The order of the table: by total, then by each tie-break among those still equal.

use crate::ledger::Kind;
use crate::points::LeaguePoints;
use crate::share::Share;
use crate::week::WeekNo;

use super::board::{Board, Roster, RoundKind, worth};
use super::credits::Credits;
use super::facts::SeasonFacts;
use super::table::TieBreakValue;
use super::tiebreaks::{Basis, Exact, Rule, TieBreak, UnplayedRounds};

/// Where a player stands.
pub(super) struct Place {
    pub(super) player: usize,
    pub(super) rank: u32,
    pub(super) shared: bool,
    pub(super) tie_breaks: Vec<TieBreakValue>,
    pub(super) decided_by: Option<TieBreak>,
}

pub(super) fn rank(
    facts: &SeasonFacts,
    roster: &Roster<'_>,
    credits: &mut Credits<'_>,
    as_of: WeekNo,
) -> Vec<Place> {
    let totals: Vec<LeaguePoints> = credits.sums.iter().map(|sums| sums.total()).collect();
    let board = board(facts, roster, credits, as_of, &totals);
    let order = &facts.tie_breaks.terms().order;
    let mut ranking = Ranking {
        values: order
            .iter()
            .map(|rule| values(rule.rule(), &board, totals.len()))
            .collect(),
        board: &board,
        order,
        decided_by: vec![None; totals.len()],
        shared_with_above: vec![false; totals.len()],
    };
    let mut players: Vec<usize> = (0..totals.len()).collect();
    let total_of = |player: &usize| totals.get(*player).copied().unwrap_or_default();
    players.sort_by_key(|player| std::cmp::Reverse(total_of(player)));
    for tied in players.chunk_by_mut(|a, b| total_of(a) == total_of(b)) {
        ranking.split(tied, 0);
    }
    let places = ranking.places(&players);
    credits.rounds.of_player = board.rounds;
    places
}

fn values(rule: Rule, board: &Board, players: usize) -> Vec<Option<Exact>> {
    match rule {
        Rule::Each(value) => (0..players)
            .map(|player| Some(value(board, player)))
            .collect(),
        Rule::Among(_) => vec![None; players],
    }
}

struct Ranking<'b> {
    board: &'b Board,
    order: &'b [TieBreak],
    values: Vec<Vec<Option<Exact>>>,
    decided_by: Vec<Option<TieBreak>>,
    shared_with_above: Vec<bool>,
}

impl Ranking<'_> {
    /// Orders players that are equal in everything before the tie-break at `depth`.
    fn split(&mut self, tied: &mut [usize], depth: usize) {
        if tied.len() < 2 {
            return;
        }
        let (Some(&tie_break), Some(values)) = (self.order.get(depth), self.values.get_mut(depth))
        else {
            for &player in tied.iter().skip(1) {
                if let Some(shared) = self.shared_with_above.get_mut(player) {
                    *shared = true;
                }
            }
            return;
        };
        if let Rule::Among(among) = tie_break.rule() {
            for (&player, value) in tied.iter().zip(among(self.board, tied)) {
                if let Some(cell) = values.get_mut(player) {
                    *cell = value;
                }
            }
        }
        let value = |player: &usize| values.get(*player).copied().flatten();
        if tie_break.fewer_is_better() {
            tied.sort_by_key(value);
        } else {
            tied.sort_by_key(|player| std::cmp::Reverse(value(player)));
        }
        let groups = tied.chunk_by(|a, b| value(a) == value(b));
        let sizes: Vec<usize> = groups.map(<[usize]>::len).collect();
        let mut rest = tied;
        for (group, size) in sizes.into_iter().enumerate() {
            let (equal, others) = rest.split_at_mut(size);
            if let (true, Some(first)) = (group > 0, equal.first())
                && let Some(decided) = self.decided_by.get_mut(*first)
            {
                *decided = Some(tie_break);
            }
            self.split(equal, depth + 1);
            rest = others;
        }
    }

    fn places(&self, players: &[usize]) -> Vec<Place> {
        let shares = |player: usize| self.shared_with_above.get(player) == Some(&true);
        let mut rank = 0;
        let ranked = players.iter().zip(1..).map(|(&player, position)| {
            if !shares(player) {
                rank = position;
            }
            let next = usize::try_from(position)
                .ok()
                .and_then(|next| players.get(next));
            Place {
                player,
                rank,
                shared: shares(player) || next.is_some_and(|&next| shares(next)),
                tie_breaks: self.values_of(player),
                decided_by: self.decided_by.get(player).copied().flatten(),
            }
        });
        ranked.collect()
    }

    fn values_of(&self, player: usize) -> Vec<TieBreakValue> {
        let values = self.order.iter().zip(&self.values);
        let values = values.map(|(&tie_break, values)| TieBreakValue {
            tie_break,
            value: values.get(player).copied().flatten(),
        });
        values.collect()
    }
}

fn board(
    facts: &SeasonFacts,
    roster: &Roster<'_>,
    credits: &mut Credits<'_>,
    as_of: WeekNo,
    totals: &[LeaguePoints],
) -> Board {
    let terms = facts.tie_breaks.terms();
    let rounds = std::mem::take(&mut credits.rounds.of_player);
    let (win, draw) = match terms.basis {
        Basis::StandardPoints => (2, 1),
        Basis::GamePoints | Basis::Total => (
            2 * i64::from(facts.scoring.win().get()),
            2 * i64::from(facts.scoring.draw().get()),
        ),
    };
    let score: Vec<i64> = match terms.basis {
        Basis::Total => totals
            .iter()
            .map(|total| 2 * i64::from(total.get()))
            .collect(),
        basis => {
            let sum = |rounds: &Vec<_>| rounds.iter().map(|round| worth(basis, round)).sum();
            rounds.iter().map(sum).collect()
        }
    };
    let score_for_opponents = rounds
        .iter()
        .zip(&score)
        .map(|(rounds, score)| score + unplayed_as_draws(rounds, terms.unplayed, terms.basis, draw))
        .collect();
    let mut painted_share = vec![(WeekNo::FIRST, Share::NOTHING); totals.len()];
    for painted in facts.painted.iter().filter(|painted| painted.week <= as_of) {
        let place = roster.place(painted.player);
        if let Some(latest) = place.and_then(|place| painted_share.get_mut(place))
            && painted.week >= latest.0
        {
            *latest = (painted.week, painted.share);
        }
    }
    Board {
        rounds,
        score,
        score_for_opponents,
        painting_points: credits
            .sums
            .iter()
            .map(|sums| sums.of(Kind::Painting))
            .collect(),
        painted_share: painted_share.into_iter().map(|(_, share)| share).collect(),
        basis: terms.basis,
        unplayed: terms.unplayed,
        win,
        draw,
    }
}

/// What a player's unplayed rounds change in the score that opponents get from them.
fn unplayed_as_draws(
    rounds: &[super::board::Round],
    rule: UnplayedRounds,
    basis: Basis,
    draw: i64,
) -> i64 {
    let change = |round: &super::board::Round| draw - worth(basis, round);
    match rule {
        UnplayedRounds::LeftOut => 0,
        UnplayedRounds::VirtualOpponent => rounds
            .iter()
            .filter(|round| !round.kind.is_played())
            .map(change)
            .sum(),
        UnplayedRounds::OwnScore => {
            let away = |round: &&super::board::Round| matches!(round.kind, RoundKind::Away);
            rounds.iter().rev().take_while(away).map(change).sum()
        }
    }
}
