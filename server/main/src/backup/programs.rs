//! PostgreSQL's programs pg_dump, pg_restore and psql, run on one database.

use std::fs::File;
use std::io::{self, Write};
use std::path::Path;
use std::process::{Child, Command, Output, Stdio};
use std::sync::Arc;
use std::thread;

use store::ClientAddress;
use tokio_postgres::Client;

use crate::cli::{CommandError, CommandResult};
use crate::postgres::Binaries;

/// Everything of ours goes before what is in the file comes; what belongs to an extension stays.
const CLEAR: &str = "do $$
declare
    statements text;
begin
    select string_agg(statement, '; ') into statements from (
        select format('drop table if exists %s cascade', oid::regclass) as statement from pg_class
        where relnamespace = 'public'::regnamespace and relkind in ('r', 'p') and not exists (
            select from pg_depend where objid = pg_class.oid and deptype = 'e')
        union all
        select format('drop function if exists %s cascade', oid::regprocedure) from pg_proc
        where pronamespace = 'public'::regnamespace and prokind = 'f' and not exists (
            select from pg_depend where objid = pg_proc.oid and deptype = 'e')
    ) as ours;
    if statements is not null then execute statements; end if;
end
$$;";

const RAISE_VERSIONS: &str = "update public.seasons set version = version + 1000000;";

/// What becomes of the seasons' versions.
#[derive(Clone, Copy, Debug)]
pub enum VersionsAfter {
    /// They are as they were.
    Kept,
    /// They rise far: readers may have seen some that were acknowledged after the backup, and take nothing older.
    Raised,
}

/// The programs that fit the server of a database, and the address of that.
pub struct Programs {
    binaries: Arc<Binaries>,
    address: ClientAddress,
}

impl Programs {
    /// Those of the server's own major version where they are installed, else the newest.
    ///
    /// # Errors
    /// No programs, or a server that does not say its version.
    pub async fn for_server(
        client: &Client,
        address: &str,
        postgres_bin: Option<&Path>,
    ) -> Result<Self, CommandError> {
        let version = "select current_setting('server_version_num')::int / 10000";
        let major: i32 = client.query_one(version, &[]).await?.try_get(0)?;
        Ok(Self {
            binaries: Arc::new(Binaries::for_server(postgres_bin, major.unsigned_abs())?),
            address: ClientAddress::read(address)?,
        })
    }

    /// The folder of the programs.
    pub fn folder(&self) -> &Path {
        self.binaries.folder()
    }

    /// The same programs on another database.
    pub fn at(&self, address: &str) -> Result<Self, CommandError> {
        Ok(Self {
            binaries: Arc::clone(&self.binaries),
            address: ClientAddress::read(address)?,
        })
    }

    /// Writes what a snapshot shows into a file.
    ///
    /// # Errors
    /// What pg_dump says.
    pub fn dump(&self, snapshot: &str, into: File) -> CommandResult {
        let mut dump = self.command("pg_dump");
        dump.args(["--format=custom", "--snapshot", snapshot])
            .stdout(into);
        check(
            "pg_dump",
            &dump.stderr(Stdio::piped()).spawn()?.wait_with_output()?,
        )
    }

    /// Puts what a file holds in the place of all that is in the database, or changes nothing.
    ///
    /// # Errors
    /// What pg_restore or psql say.
    pub fn restore(&self, file: &Path, versions: VersionsAfter) -> CommandResult {
        let mut psql = self
            .command("psql")
            .args(["--no-psqlrc", "--quiet", "--set=ON_ERROR_STOP=1"])
            .stdin(Stdio::piped())
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()?;
        let script = Command::new(self.binaries.program("pg_restore"))
            .arg("--no-owner")
            .arg("--file=-")
            .arg(file)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()?;
        let read = feed(&mut psql, script, versions);
        let put = check("psql", &psql.wait_with_output()?);
        // A file that cannot be read is the cause of whatever psql says then.
        read.and(put)
    }

    fn command(&self, program: &str) -> Command {
        let mut command = Command::new(self.binaries.program(program));
        command
            .arg("--no-password")
            .arg("--dbname")
            .arg(&self.address.text)
            .env("PGOPTIONS", "-c client_min_messages=warning");
        // Other users of a machine can see arguments.
        if let Some(password) = &self.address.password {
            command.env("PGPASSWORD", password);
        }
        command
    }
}

/// Hands the statements of a file to psql, within one transaction that is only committed if the file was read to
/// its end.
fn feed(psql: &mut Child, mut script: Child, versions: VersionsAfter) -> CommandResult {
    let (Some(mut into), Some(mut statements), Some(mut errors)) = (
        psql.stdin.take(),
        script.stdout.take(),
        script.stderr.take(),
    ) else {
        return Err("no way to hand statements to psql".into());
    };
    let said = thread::spawn(move || {
        let mut said = Vec::new();
        io::Read::read_to_end(&mut errors, &mut said).map(|_| said)
    });
    // Where psql has ended, it says itself why.
    let handed =
        writeln!(into, "begin;\n{CLEAR}").and_then(|()| io::copy(&mut statements, &mut into));
    drop(statements);
    let status = script.wait()?;
    let said = said.join().map_err(|_| "pg_restore says nothing")??;
    if handed.is_ok() {
        check(
            "pg_restore",
            &Output {
                status,
                stdout: Vec::new(),
                stderr: said,
            },
        )?;
        let raise = match versions {
            VersionsAfter::Kept => "",
            VersionsAfter::Raised => RAISE_VERSIONS,
        };
        let _ = writeln!(into, "{raise}\ncommit;");
    }
    Ok(())
}

fn check(program: &str, output: &Output) -> CommandResult {
    if output.status.success() {
        return Ok(());
    }
    let said = String::from_utf8_lossy(&output.stderr);
    Err(format!("{program}: {}", said.trim()).into())
}
