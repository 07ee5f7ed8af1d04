//! Round robins: the Berger tables, and the task of a round that one of them decides.

pub mod berger;
pub mod seats;
pub mod table_round;
