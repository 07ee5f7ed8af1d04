//! Accounts, passwords, sessions and tokens.

mod authenticate;
mod find_account;
mod password;
mod refresh_session;
mod register_account;
mod sign_in;
mod sign_in_to_pages;
mod sign_out;
pub(crate) mod token;

pub use authenticate::{UnverifiedSession, authenticate};
pub use find_account::{AccountOverview, find_account};
pub use refresh_session::refresh_session;
pub use register_account::{RegisterAccount, register_account};
pub use sign_in::{SignIn, sign_in};
pub use sign_in_to_pages::{PageSession, authenticate_page, sign_in_to_pages};
pub use sign_out::sign_out;
pub use token::Tokens;
