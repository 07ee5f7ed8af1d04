//! Bit set of the point sums from 0 to a cap.

/// Which sums from 0 to the cap can be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SumSet {
    words: Vec<u64>,
    cap: usize,
}

impl SumSet {
    /// No sum at all, up to `cap`.
    pub fn empty(cap: usize) -> Self {
        Self {
            words: vec![0; cap / 64 + 1],
            cap,
        }
    }

    /// The empty sum alone.
    pub fn only_zero(cap: usize) -> Self {
        let mut sums = Self::empty(cap);
        sums.insert(0);
        sums
    }

    /// Adds one sum; one above the cap is left out.
    pub fn insert(&mut self, sum: usize) {
        if sum <= self.cap
            && let Some(word) = self.words.get_mut(sum / 64)
        {
            *word |= 1 << (sum % 64);
        }
    }

    /// Adds every sum of the other set raised by `more`; those above the cap are left out.
    /// Whether that added anything.
    pub fn insert_shifted(&mut self, other: &Self, more: usize) -> bool {
        let (skip, shift) = (more / 64, more % 64);
        let mut grown = false;
        let mut carried = 0;
        let last = self.words.len().saturating_sub(1);
        for (i, (word, &source)) in self
            .words
            .iter_mut()
            .skip(skip)
            .zip(&other.words)
            .enumerate()
        {
            let raised = (source << shift) | carried;
            carried = if shift == 0 {
                0
            } else {
                source >> (64 - shift)
            };
            let raised = if i + skip == last {
                raised & mask_to(self.cap % 64)
            } else {
                raised
            };
            grown |= raised & !*word != 0;
            *word |= raised;
        }
        grown
    }

    /// Every sum of a member of this set and one of the other, up to the cap.
    pub fn pairwise_sums(&self, other: &Self) -> Self {
        let mut sums = Self::empty(self.cap);
        for more in other.iter() {
            sums.insert_shifted(self, more);
        }
        sums
    }

    /// The sums from `least` to `most` alone.
    pub fn within(&self, least: usize, most: usize) -> Self {
        let mut sums = Self::empty(self.cap);
        for sum in self.iter().filter(|sum| (least..=most).contains(sum)) {
            sums.insert(sum);
        }
        sums
    }

    /// The sums, ascending.
    pub fn iter(&self) -> impl Iterator<Item = usize> {
        self.words.iter().enumerate().flat_map(|(i, &word)| {
            let bits = std::iter::successors(Some(word), |&rest| Some(rest & rest.wrapping_sub(1)));
            bits.take_while(|&rest| rest != 0)
                .map(move |rest| i * 64 + rest.trailing_zeros() as usize)
        })
    }

    /// The smallest and the largest sum.
    pub fn min_and_max(&self) -> Option<(usize, usize)> {
        Some((self.iter().next()?, self.iter().last()?))
    }

    /// The largest sum that can be held.
    pub fn cap(&self) -> usize {
        self.cap
    }

    /// Machine words of the set: what one pass over it costs.
    pub fn word_count(&self) -> usize {
        self.words.len()
    }

    /// How many sums there are.
    pub fn len(&self) -> usize {
        self.words
            .iter()
            .map(|word| word.count_ones() as usize)
            .sum()
    }
}

/// All bits up to this one.
fn mask_to(bit: usize) -> u64 {
    u64::MAX >> (63 - bit)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use proptest::prelude::*;

    use super::*;

    fn sum_set(cap: usize, sums: &BTreeSet<usize>) -> SumSet {
        let mut set = SumSet::empty(cap);
        for &sum in sums {
            set.insert(sum);
        }
        set
    }

    proptest! {
        #[test]
        fn sums_are_those_of_plain_sets(
            cap in 0_usize..200,
            a in proptest::collection::btree_set(0_usize..220, 0..20),
            b in proptest::collection::btree_set(0_usize..220, 0..20),
        ) {
            let both = sum_set(cap, &a).pairwise_sums(&sum_set(cap, &b));
            let kept = |set: &BTreeSet<usize>| -> Vec<usize> {
                set.iter().copied().filter(|&sum| sum <= cap).collect()
            };
            let mut expected = BTreeSet::new();
            for x in kept(&a) {
                expected.extend(kept(&b).into_iter().map(|y| x + y).filter(|&sum| sum <= cap));
            }
            prop_assert_eq!(both.iter().collect::<BTreeSet<_>>(), expected.clone());
            prop_assert_eq!(both.len(), expected.len());
            let ends = expected.first().zip(expected.last()).map(|(&a, &b)| (a, b));
            prop_assert_eq!(both.min_and_max(), ends);
        }
    }
}
