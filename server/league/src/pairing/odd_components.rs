//! The checker's own count of odd components.

use std::collections::BTreeSet;

/// Components with an odd number of places, of the graph on `left` in which `joined` says what is
/// joined.
pub fn odd_components(mut left: BTreeSet<usize>, joined: impl Fn(usize, usize) -> bool) -> usize {
    let mut odd = 0;
    while let Some(first) = left.pop_first() {
        let (mut size, mut reached) = (1, vec![first]);
        while let Some(a) = reached.pop() {
            let near: Vec<usize> = left.iter().copied().filter(|&b| joined(a, b)).collect();
            size += near.len();
            left.retain(|b| !near.contains(b));
            reached.extend(near);
        }
        odd += size % 2;
    }
    odd
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_of_three_and_two_single_places_are_three_odd_components() {
        let joined = |a: usize, b: usize| a.max(b) < 3 && a.abs_diff(b) == 1;
        assert_eq!(odd_components((0..5).collect(), joined), 3);
    }
}
