//! The state of the database that an error message tells of. diesel keeps no SQLSTATE, so the message has
//! to tell, in English: `lc_messages` of the database is to be `C` or an English locale.

/// Why the database could do nothing, though nothing was wrong with what it was asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Condition {
    /// 40P01: transactions wait for each other.
    Deadlock,
    /// Class 53, 58 and faults of files: no room on the disk, no memory, no connection, a file that
    /// cannot be read.
    NoResources,
    /// Class 57 and 55P03: it ends, begins, or gave up waiting; or a node of a distributed one is away.
    Unavailable,
}

const NO_RESOURCES: [&str; 7] = [
    "out of memory",
    "out of shared memory",
    "sorry, too many clients already",
    "too many connections for ",
    "remaining connection slots are reserved",
    "temporary file size exceeds temp_file_limit",
    "could not resize shared memory segment",
];

const UNAVAILABLE: [&str; 7] = [
    "terminating connection",
    "the database system is ",
    "canceling statement due to ",
    "could not obtain lock ",
    "connection to the remote node ",
    "could not connect to ",
    "failed to connect to ",
];

impl Condition {
    pub fn of_message(message: &str) -> Option<Self> {
        let begins_with = |starts: &[&str]| starts.iter().any(|start| message.starts_with(start));
        if message.contains("deadlock") {
            Some(Self::Deadlock)
        } else if begins_with(&NO_RESOURCES) || is_of_files(message) {
            Some(Self::NoResources)
        } else if begins_with(&UNAVAILABLE) {
            Some(Self::Unavailable)
        } else {
            None
        }
    }
}

/// A call of the operating system that failed: `could not extend file "base/5/16433": No space left on
/// device`, `could not write block 7 of temporary file: …`.
fn is_of_files(message: &str) -> bool {
    let of_system = |call: &str| {
        ["file ", "file:", "directory "]
            .iter()
            .any(|of| call.contains(of))
            && call.contains(": ")
    };
    message.strip_prefix("could not ").is_some_and(of_system)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_the_database_cannot_help_is_told_from_what_is_wrong_with_a_statement() {
        use Condition as C;
        for (message, told) in [
            ("deadlock detected", Some(C::Deadlock)),
            (
                "canceling the transaction since it was involved in a distributed deadlock",
                Some(C::Deadlock),
            ),
            (
                "could not extend file \"base/16863/16433\": No space left on device",
                Some(C::NoResources),
            ),
            (
                "could not extend file \"base/16863/16433\": wrote only 4096 of 8192 bytes at block 7",
                Some(C::NoResources),
            ),
            (
                "could not write to file \"base/pgsql_tmp/pgsql_tmp417.0\": No space left on device",
                Some(C::NoResources),
            ),
            (
                "could not read block 3 in file \"base/16863/16433\": Input/output error",
                Some(C::NoResources),
            ),
            (
                "could not open file \"base/16863/16433\": No such file or directory",
                Some(C::NoResources),
            ),
            (
                "could not write block 7 of temporary file: No space left on device",
                Some(C::NoResources),
            ),
            ("out of memory", Some(C::NoResources)),
            ("sorry, too many clients already", Some(C::NoResources)),
            (
                "terminating connection due to administrator command",
                Some(C::Unavailable),
            ),
            ("the database system is starting up", Some(C::Unavailable)),
            (
                "canceling statement due to statement timeout",
                Some(C::Unavailable),
            ),
            (
                "connection to the remote node tallyhost@worker-2:5432 failed with the following error: server closed the connection unexpectedly",
                Some(C::Unavailable),
            ),
            ("could not determine data type of parameter $1", None),
            ("column \"x\" does not exist", None),
            ("invalid input syntax for type uuid: \"file : x\"", None),
        ] {
            assert_eq!(C::of_message(message), told, "{message}");
        }
    }
}
