//! Army points and league points: two types, so that they cannot be added together.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Neg, Sub};

use messages::Value;

/// Most points anything may cost or any cap may allow; sums of many stay far inside `u32`.
pub const MAX_POINTS: u32 = 100_000;

/// Army points: what units cost and caps limit. Never negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Points(u32);

impl Points {
    pub const ZERO: Self = Self(0);

    /// Any amount; inputs are limited by [`Points::new_checked`].
    pub const fn new(amount: u32) -> Self {
        Self(amount)
    }

    /// `None` above [`MAX_POINTS`]: the limit for a single cost or cap taken from input.
    pub fn new_checked(amount: u32) -> Option<Self> {
        (amount <= MAX_POINTS).then_some(Self(amount))
    }

    pub const fn get(self) -> u32 {
        self.0
    }

    /// What is left of `self` after `used`; zero when `used` is more.
    pub fn saturating_sub(self, used: Self) -> Self {
        Self(self.0.saturating_sub(used.0))
    }

    /// This many of the same; stays at the largest number rather than wrapping.
    pub fn saturating_mul(self, count: u32) -> Self {
        Self(self.0.saturating_mul(count))
    }
}

impl Add for Points {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl AddAssign for Points {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sum for Points {
    fn sum<I: Iterator<Item = Self>>(points: I) -> Self {
        points.fold(Self::ZERO, Self::add)
    }
}

impl From<Points> for Value {
    fn from(points: Points) -> Self {
        points.0.into()
    }
}

impl fmt::Display for Points {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// Points of the table of the league; a penalty is negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LeaguePoints(i32);

impl LeaguePoints {
    pub const ZERO: Self = Self(0);

    pub const fn new(amount: i32) -> Self {
        Self(amount)
    }

    pub const fn get(self) -> i32 {
        self.0
    }
}

impl Add for LeaguePoints {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl AddAssign for LeaguePoints {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for LeaguePoints {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Neg for LeaguePoints {
    type Output = Self;

    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

impl Sum for LeaguePoints {
    fn sum<I: Iterator<Item = Self>>(points: I) -> Self {
        points.fold(Self::ZERO, Self::add)
    }
}

impl From<LeaguePoints> for Value {
    fn from(points: LeaguePoints) -> Self {
        points.0.into()
    }
}

impl fmt::Display for LeaguePoints {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}
