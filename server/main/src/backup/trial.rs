//! A trial of a backup: restored into a cluster that is thrown away.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use super::contents::Contents;
use super::programs::{Programs, VersionsAfter};
use crate::cli::CommandError;
use crate::postgres::{Cluster, Durability};

/// What a backup brings back, found by restoring it into a cluster of its own.
///
/// # Errors
/// Whatever keeps it from being restored.
pub async fn restore_on_trial(programs: &Programs, file: &Path) -> Result<Contents, CommandError> {
    let scratch = Scratch::new()?;
    let cluster = Cluster::start(&scratch.0, Some(programs.folder()), Durability::None)?;
    let url = cluster.url();
    let client = store::connect_client(&url).await?;
    client.batch_execute(CREATE_READERS).await?;
    programs.at(&url)?.restore(file, VersionsAfter::Kept)?;
    Contents::hold_snapshot(&client).await?;
    Ok(Contents::read(&client).await?)
}

/// The role whose rights `docker/standings.sql` describes: a backup that holds them wants it to be there.
pub const CREATE_READERS: &str = "do $$
begin
    if not exists (select from pg_roles where rolname = 'standings') then
        create role standings nologin;
    end if;
end
$$";

/// A folder that is removed at the end; the cluster in it must have ended before.
struct Scratch(PathBuf);

impl Scratch {
    fn new() -> Result<Self, CommandError> {
        let mut bytes = [0; 8];
        getrandom::fill(&mut bytes)?;
        let name = format!("tallyhost-trial-{}", hex::encode(bytes));
        Ok(Self(env::temp_dir().join(name)))
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        if let Err(fault) = fs::remove_dir_all(&self.0) {
            tracing::warn!(%fault, folder = %self.0.display(), "the trial's folder stays");
        }
    }
}
