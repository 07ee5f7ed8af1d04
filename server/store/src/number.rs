//! Whole numbers between the league's types and PostgreSQL's, which are signed.

use std::fmt::Display;

use crate::StoreError;

/// The same number as another type.
///
/// # Errors
/// [`StoreError::Internal`] when that type does not have it; `what` says of which number.
pub(crate) fn convert<A, B>(what: &str, number: A) -> Result<B, StoreError>
where
    A: Copy + Display,
    B: TryFrom<A>,
{
    B::try_from(number).map_err(|_| StoreError::Internal(format!("{what} is {number}")))
}
