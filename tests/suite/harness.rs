//! What the stories stand on: a real server over a real database, people with names who talk to it
//! over HTTP, and a clock that moves when the story says so.

mod actor;
mod answer;
mod browser;
mod clock;
mod cluster;
mod database;
mod fleet;
mod folder;
mod follower;
mod league;
mod pictures;
mod problem;
mod server;
mod stage;
mod until;

pub use actor::Actor;
pub use answer::Answer;
pub use browser::Browser;
pub use cluster::{RUNTIME, SPOILT, connects, refused_at, texts_at};
pub use database::Database;
pub use fleet::{PRIMARY, REPLICA, Replica, beside_postgres};
pub use folder::{cluster_in, open_folder, postmaster_in};
pub use follower::Follower;
pub use league::*;
pub use pictures::{bytes_of, picture};
pub use problem::{Problem, Said};
pub use server::Server;
pub use stage::{ClosedStage, Stage};
pub use until::{POLL_INTERVAL, until};
