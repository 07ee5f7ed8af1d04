//! The identity behind a request: a signed-in actor, or an anonymous viewer.

use league::ids::AccountId;
use uuid::Uuid;

/// Somebody who has signed in.
#[derive(Clone, Copy, Debug)]
pub struct Actor {
    pub account: AccountId,
    pub session: Uuid,
}

/// Whoever reads: signed in or not.
pub type Viewer = Option<Actor>;
