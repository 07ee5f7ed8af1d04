//! Chains of open games. While nobody has more than two of them, the games that do not involve one
//! player form paths and rings; along each, dynamic programming over the results of one game after the
//! other finds the smallest sum of costs.

/// Games in a row, each sharing a player with the next.
pub struct Chain {
    /// For a path one more than games; for a ring as many, the first between last and first game.
    pub players: Vec<usize>,
    pub games: Vec<usize>,
    pub ring: bool,
}

impl Chain {
    /// The smallest sum of costs of its players over all results of its games.
    pub fn min_cost(
        &self,
        results: usize,
        cost: &impl Fn(usize, [Option<(usize, usize)>; 2]) -> i64,
    ) -> i64 {
        let (Some(&start), Some(&first)) = (self.players.first(), self.games.first()) else {
            return 0;
        };
        let opened = (0..results).map(|opening| {
            let mut sums: Vec<Option<i64>> = vec![None; results];
            if let Some(sum) = sums.get_mut(opening) {
                *sum = Some(match self.ring {
                    true => 0,
                    false => cost(start, [Some((first, opening)), None]),
                });
            }
            let mut last = first;
            let steps = self.players.iter().skip(1).zip(self.games.iter().skip(1));
            for (&player, &game) in steps {
                let sum = |to| {
                    let from = sums.iter().enumerate().filter_map(|(from, sum)| {
                        let known = [Some((last, from)), Some((game, to))];
                        sum.map(|sum| sum + cost(player, known))
                    });
                    from.min()
                };
                sums = (0..results).map(sum).collect();
                last = game;
            }
            let ends = sums.iter().enumerate().filter_map(|(result, sum)| {
                let end = match (self.ring, self.players.last()) {
                    (true, _) => cost(start, [Some((first, opening)), Some((last, result))]),
                    (false, Some(&end)) => cost(end, [Some((last, result)), None]),
                    (false, None) => 0,
                };
                sum.map(|sum| sum + end)
            });
            ends.min()
        });
        opened.flatten().min().unwrap_or(0)
    }
}
