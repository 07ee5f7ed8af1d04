//! The system user whom the database runs as.

use std::fs::{self, Permissions};
use std::os::unix::fs::{MetadataExt, PermissionsExt, chown};
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::Command;

use nix::unistd::{Uid, User};

use super::error::PostgresError;

/// Who the database runs as: PostgreSQL refuses to run as root.
#[derive(Debug)]
pub(super) enum Owner {
    /// The user who started the server.
    Myself,
    /// An unprivileged user, where the server was started by root.
    Other(User),
}

impl Owner {
    pub(super) fn choose() -> Result<Self, PostgresError> {
        if !Uid::effective().is_root() {
            return Ok(Self::Myself);
        }
        ["postgres", "nobody"]
            .into_iter()
            .find_map(|name| User::from_name(name).ok().flatten())
            .map(Self::Other)
            .ok_or(PostgresError::NoUser)
    }

    /// Makes a folder that only the owner may enter, or leaves one that is there.
    pub(super) fn create_folder(&self, folder: &Path) -> Result<(), PostgresError> {
        fs::create_dir_all(folder).map_err(PostgresError::system("cannot create", folder))?;
        if let Self::Other(user) = self {
            chown(folder, Some(user.uid.as_raw()), Some(user.gid.as_raw()))
                .map_err(PostgresError::system("cannot hand over", folder))?;
        }
        fs::set_permissions(folder, Permissions::from_mode(0o700))
            .map_err(PostgresError::system("cannot close", folder))
    }

    /// A command that runs as the owner, from a folder that everyone may enter.
    pub(super) fn command(&self, program: &Path) -> Command {
        let mut command = Command::new(program);
        command.current_dir("/");
        if let Self::Other(user) = self {
            command.uid(user.uid.as_raw()).gid(user.gid.as_raw());
        }
        command
    }

    /// Checks that the owner may pass through a folder and everything above it.
    pub(super) fn check_way_to(&self, folder: &Path) -> Result<(), PostgresError> {
        let Self::Other(user) = self else {
            return Ok(());
        };
        for step in folder.ancestors() {
            let facts =
                fs::metadata(step).map_err(PostgresError::system("cannot look at", step))?;
            let enter = if facts.uid() == user.uid.as_raw() {
                0o100
            } else if facts.gid() == user.gid.as_raw() {
                0o010
            } else {
                0o001
            };
            if facts.mode() & enter == 0 {
                return Err(PostgresError::Unreachable {
                    folder: step.to_owned(),
                    user: user.name.clone(),
                });
            }
        }
        Ok(())
    }
}
