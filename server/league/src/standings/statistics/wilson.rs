//! The Wilson score interval: a confidence interval for a counted share.
//!
//! E. B. Wilson, "Probable inference, the law of succession, and statistical inference", Journal of
//! the American Statistical Association 22 (1927), 209-212.

/// The standard normal quantile for 95 % on both sides.
const Z: f64 = 1.959_963_984_540_054;

/// A counted share with its 95 % interval. Bounds are for people to look at, so they are floats;
/// nothing is ranked by them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WilsonInterval {
    pub successes: u32,
    pub trials: u32,
    /// Lower bound, 0 to 1.
    pub low: f64,
    /// Upper bound, 0 to 1.
    pub high: f64,
}

impl WilsonInterval {
    /// `None` without trials or with more successes than trials.
    pub fn new(successes: u32, trials: u32) -> Option<Self> {
        if trials == 0 || successes > trials {
            return None;
        }
        let (k, n) = (f64::from(successes), f64::from(trials));
        let share = k / n;
        let scale = 1.0 + Z * Z / n;
        let centre = (share + Z * Z / (2.0 * n)) / scale;
        let spread = Z / scale * (share * (1.0 - share) / n + Z * Z / (4.0 * n * n)).sqrt();
        Some(Self {
            successes,
            trials,
            low: (centre - spread).max(0.0),
            high: (centre + spread).min(1.0),
        })
    }

    /// The counted share itself, 0 to 1.
    pub fn share(&self) -> f64 {
        f64::from(self.successes) / f64::from(self.trials)
    }
}
