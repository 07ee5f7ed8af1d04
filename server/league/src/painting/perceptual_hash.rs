//! Perceptual hash of a picture: alike for pictures that look alike, however they were saved.

/// What a picture looks like: one bit for each of 64 neighbours of an eight by eight grid, set where
/// it grows brighter. Common practice (difference hash), no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PerceptualHash(pub u64);

/// Bits in which two pictures of the same thing may differ. Common practice, no source.
const MAX_DIFFERENT_BITS: u32 = 6;

impl PerceptualHash {
    /// Of a grid of brightness, row by row.
    pub fn from_rows(rows: &[[u8; 9]; 8]) -> Self {
        let steps = rows
            .iter()
            .flat_map(|row| row.iter().zip(row.iter().skip(1)));
        Self(steps.fold(0, |bits, (left, right)| bits << 1 | u64::from(left < right)))
    }

    /// Whether both seem to show the same picture: a reason to look, never a verdict.
    pub fn resembles(self, other: Self) -> bool {
        (self.0 ^ other.0).count_ones() <= MAX_DIFFERENT_BITS
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_brighter_copy_looks_the_same_and_its_negative_does_not() {
        let rows = [[3, 9, 27, 81, 80, 40, 20, 10, 5]; 8];
        let likeness = PerceptualHash::from_rows(&rows);
        assert_eq!(
            likeness,
            PerceptualHash::from_rows(&rows.map(|row| row.map(|light| light + 9)))
        );
        assert!(!likeness.resembles(PerceptualHash::from_rows(
            &rows.map(|row| row.map(|light| 255 - light))
        )));
    }

    #[test]
    fn six_bits_of_difference_are_the_same_picture_and_seven_are_not() {
        assert!(PerceptualHash(0).resembles(PerceptualHash(0b11_1111)));
        assert!(!PerceptualHash(0).resembles(PerceptualHash(0b111_1111)));
    }
}
