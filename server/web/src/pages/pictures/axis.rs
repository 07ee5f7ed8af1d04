//! The vertical axis of a chart.

/// A vertical axis from 0 to at least `max`, with a line at each round number.
pub struct Axis {
    top: u32,
    bottom: u32,
    max: u32,
    /// Value and height of each line, from the bottom.
    pub ticks: Vec<(u32, u32)>,
}

impl Axis {
    /// Between two heights of the picture.
    pub fn new(max: u32, top: u32, bottom: u32) -> Self {
        let step = round_step(max);
        let lines = max.div_ceil(step).max(1);
        let mut axis = Self {
            top,
            bottom,
            max: lines * step,
            ticks: Vec::new(),
        };
        let values = (0..=lines).map(|line| line * step);
        axis.ticks = values.map(|value| (value, axis.y(value))).collect();
        axis
    }

    /// The height of a value.
    pub fn y(&self, value: u32) -> u32 {
        let height = u64::from(self.bottom - self.top);
        let above = height * u64::from(value.min(self.max)) / u64::from(self.max);
        // Never above the whole height, so it fits.
        self.bottom - u32::try_from(above).unwrap_or_default()
    }
}

/// A step of 1, 2 or 5 times a power of ten that makes at most five lines.
fn round_step(max: u32) -> u32 {
    let steps = (0..9).flat_map(|power| [1, 2, 5].map(|digit| digit * 10_u32.pow(power)));
    let mut steps = steps.skip_while(|step| max.div_ceil(*step) > 5);
    // Above the largest step one line is left.
    steps.next().unwrap_or(max.max(1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_axis_has_few_round_lines_and_ends_above_everything() {
        for (max, last, lines) in [(0, 1, 2), (9, 10, 6), (1000, 1000, 6), (1010, 1500, 4)] {
            let axis = Axis::new(max, 20, 220);
            assert_eq!(axis.ticks.len(), lines, "{max}");
            assert_eq!(axis.ticks.last(), Some(&(last, 20)), "{max}");
            assert_eq!((axis.y(0), axis.y(last)), (220, 20));
        }
    }
}
