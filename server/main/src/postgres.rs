//! A private PostgreSQL cluster in a data folder, so that a club needs no database administrator.
//!
//! The server finds the binaries, makes the cluster once, starts it, watches it and stops it. It is
//! the same engine as a production database; only its address differs: a Unix socket inside the
//! data folder, and no TCP port at all.
//!
//! ```text
//! <data folder>/lock       held by the one server that uses the folder
//! <data folder>/pg15/      the cluster, named after its major version
//! <data folder>/pg15.log   what the database says; pg15.log.old what it said before
//! <data folder>/socket/    where it is reached; only its owner may enter
//! ```

mod binaries;
mod cluster;
mod error;
mod folder;
mod initdb;
mod lock;
mod log;
mod orphan;
mod owner;
mod parent_death;
mod pid_file;
mod postmaster;

pub use binaries::Binaries;
pub use cluster::Cluster;
pub use error::PostgresError;
pub use parent_death::die_with_this_thread;
pub use postmaster::Durability;
