//! The file `postmaster.pid`.

use std::fs;
use std::path::Path;

/// What a running PostgreSQL writes about itself into `postmaster.pid`.
///
/// Source: PostgreSQL source, `src/include/miscadmin.h`, the `LOCK_FILE_LINE_*` constants: line 1
/// is the process id, line 8 the state that `pg_ctl` waits for.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct PidFile {
    pub(super) pid: i32,
    /// Connections are accepted.
    pub(super) ready: bool,
}

impl PidFile {
    pub(super) fn read(cluster: &Path) -> Option<Self> {
        Self::parse(&fs::read_to_string(cluster.join("postmaster.pid")).ok()?)
    }

    fn parse(text: &str) -> Option<Self> {
        let mut lines = text.lines();
        let pid = lines.next()?.trim().parse().ok()?;
        let ready = lines.nth(6).is_some_and(|state| state.trim() == "ready");
        Some(Self { pid, ready })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_database_is_ready_when_line_eight_says_so() {
        let starting = "4711\n/data/pg15\n1764061200\n5432\n/data/socket\n\n  1 2\nstarting\n";
        let file = PidFile::parse(starting);
        assert_eq!(
            file,
            Some(PidFile {
                pid: 4711,
                ready: false
            })
        );
        let ready = starting.replace("starting", "ready   ");
        let file = PidFile::parse(&ready);
        assert_eq!(
            file,
            Some(PidFile {
                pid: 4711,
                ready: true
            })
        );
        assert_eq!(PidFile::parse(""), None);
    }
}
