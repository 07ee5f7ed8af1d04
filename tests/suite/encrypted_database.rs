//! The way to a database that others run: encrypted, and the certificate checked as `sslmode` asks.

use std::fs::{self, Permissions};
use std::net::TcpListener;
use std::os::unix::fs::{MetadataExt, PermissionsExt, chown};
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};

use nix::sys::signal::{Signal, kill};
use nix::unistd::{Pid, Uid};
use tallyhost::demo::{DatabaseContents, inspect};
use tallyhost::postgres::{Cluster, Durability, die_with_this_thread};
use tempfile::TempDir;

use crate::harness::{
    RUNTIME, Server, beside_postgres, cluster_in, connects, open_folder, texts_at, until,
};

#[test]
fn every_connection_to_a_verified_database_is_encrypted() {
    let postgres = EncryptedPostgres::start();
    let url = postgres.url("localhost", "verify-full", Some("authority.pem"));
    let server = Server::launch(|command| command.env("DATABASE_URL", &url));
    server.register("Wennable");
    let contents = RUNTIME.block_on(inspect(&url)).unwrap();
    assert_eq!(contents, DatabaseContents::Other);
    let unencrypted = "SELECT usename::text FROM pg_stat_ssl JOIN pg_stat_activity USING (pid)
        WHERE client_addr IS NOT NULL AND NOT ssl";
    let encrypted = unencrypted.replace("NOT ssl", "ssl");
    assert_eq!(postgres.texts(unencrypted), Vec::<String>::new());
    assert!(!postgres.texts(&encrypted).is_empty());
    assert!(!server.log().contains("sslmode"), "{}", server.log());
}

#[test]
fn a_certificate_is_checked_as_the_address_asks() {
    let postgres = EncryptedPostgres::start();
    for (host, mode, file) in [
        ("localhost", "verify-full", "authority.pem"),
        ("localhost", "verify-full", "server.pem"),
        ("127.0.0.1", "verify-ca", "authority.pem"),
        ("127.0.0.1", "require", "authority.pem"),
    ] {
        let migrated = migrate(&postgres.url(host, mode, Some(file)));
        assert!(migrated.status.success(), "{mode} {file}: {migrated:?}");
    }
    for mode in ["require", "prefer"] {
        let migrated = migrate(&postgres.url("localhost", mode, None));
        assert!(migrated.status.success(), "{mode}: {migrated:?}");
    }
    let signed_by_nobody = "name the file of the authority that signed it with sslrootcert";
    for (host, mode, file, said) in [
        (
            "localhost",
            "verify-full",
            Some("stranger.pem"),
            signed_by_nobody,
        ),
        (
            "localhost",
            "verify-ca",
            Some("stranger.pem"),
            signed_by_nobody,
        ),
        (
            "localhost",
            "require",
            Some("stranger.pem"),
            signed_by_nobody,
        ),
        (
            "127.0.0.1",
            "verify-full",
            Some("authority.pem"),
            "not valid for name",
        ),
        ("localhost", "verify-full", Some("no.pem"), "no.pem"),
        (
            "localhost",
            "verify-full",
            Some("server.key"),
            "no certificate in it",
        ),
        ("localhost", "disable", None, "no encryption"),
        ("localhost", "verify", None, "verify-ca or verify-full"),
    ] {
        refused(&postgres.url(host, mode, file), said);
    }
}

#[test]
fn a_database_without_encryption_is_refused_where_it_is_required() {
    let postgres = EncryptedPostgres::start();
    postgres.configure("ssl = off");
    refused(
        &postgres.url("localhost", "require", None),
        "server does not support TLS",
    );
}

#[test]
fn a_way_that_others_may_read_is_warned_of() {
    let url = |mode| format!("postgresql://tallyhost@nowhere.invalid/tallyhost?sslmode={mode}");
    for (mode, said) in [
        ("prefer", "may be readable to others"),
        ("disable", "may be readable to others"),
        ("require", "nobody checks who answers"),
    ] {
        refused(&url(mode), said);
    }
}

fn refused(url: &str, said: &str) {
    let output = migrate(url);
    let words = String::from_utf8_lossy(&output.stderr);
    assert!(
        !output.status.success() && words.contains(said),
        "{url}: {words}"
    );
}

fn migrate(url: &str) -> Output {
    Command::new(env!("CARGO_BIN_EXE_tallyhost"))
        .arg("migrate")
        .env("DATABASE_URL", url)
        .output()
        .unwrap()
}

/// A PostgreSQL on the loopback that takes encrypted connections alone, with a certificate for
/// `localhost` that an authority of this test signed.
struct EncryptedPostgres {
    child: Child,
    folder: TempDir,
    cluster: PathBuf,
    port: u16,
}

impl EncryptedPostgres {
    fn start() -> Self {
        let folder = open_folder();
        drop(Cluster::start(folder.path(), None, Durability::None).unwrap());
        let cluster = cluster_in(folder.path());
        let owner = fs::metadata(&cluster).unwrap();
        sign(folder.path());
        let key = folder.path().join("server.key");
        chown(&key, Some(owner.uid()), Some(owner.gid())).unwrap();
        fs::set_permissions(&key, Permissions::from_mode(0o600)).unwrap();
        let access = cluster.join("pg_hba.conf");
        fs::write(&access, "local all all trust\nhostssl all all all trust\n").unwrap();
        let free = TcpListener::bind("127.0.0.1:0").unwrap();
        let port = free.local_addr().unwrap().port();
        drop(free);
        let mut command = Command::new(beside_postgres(&cluster, "postgres"));
        command
            .arg("-D")
            .arg(&cluster)
            .arg("-k")
            .arg(folder.path().join("socket"))
            .args(["-c", "listen_addresses=localhost", "-c", "fsync=off"])
            .args(["-p", &port.to_string()])
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .current_dir("/");
        if Uid::effective().is_root() {
            command.uid(owner.uid()).gid(owner.gid());
        }
        let settings = format!(
            "ssl = on\nssl_cert_file = '{}'\nssl_key_file = '{}'\n",
            folder.path().join("server.pem").display(),
            key.display()
        );
        add_settings(&cluster, &settings);
        die_with_this_thread(&mut command);
        let started = Self {
            child: command.spawn().unwrap(),
            folder,
            cluster,
            port,
        };
        until("the encrypted database answers", || {
            connects(&started.socket_url())
        });
        started
    }

    /// Its address for the server.
    fn url(&self, host: &str, mode: &str, roots: Option<&str>) -> String {
        let roots = roots.map_or_else(String::new, |file| {
            format!("&sslrootcert={}", self.folder.path().join(file).display())
        });
        let port = self.port;
        format!("postgresql://tallyhost@{host}:{port}/tallyhost?sslmode={mode}{roots}")
    }

    fn socket_url(&self) -> String {
        let socket = self.folder.path().join("socket");
        let (port, socket) = (self.port, socket.display());
        format!("host={socket} port={port} user=tallyhost dbname=tallyhost")
    }

    fn texts(&self, query: &str) -> Vec<String> {
        texts_at(&self.socket_url(), query)
    }

    fn configure(&self, setting: &str) {
        add_settings(&self.cluster, setting);
        self.texts("SELECT pg_reload_conf()::text");
        let (name, value) = setting.split_once(" = ").unwrap();
        until(setting, || self.texts(&format!("SHOW {name}")) == [value]);
    }
}

impl Drop for EncryptedPostgres {
    fn drop(&mut self) {
        let pid = Pid::from_raw(self.child.id().cast_signed());
        let _ = kill(pid, Signal::SIGINT);
        let _ = self.child.wait();
    }
}

fn add_settings(cluster: &Path, settings: &str) {
    let file = cluster.join("postgresql.conf");
    let text = fs::read_to_string(&file).unwrap();
    fs::write(&file, format!("{text}\n{settings}\n")).unwrap();
}

/// Makes two authorities, and a certificate that the first of them signed.
fn sign(folder: &Path) {
    let request = |name: &str, subject: &str, more: &[&str]| {
        let output = Command::new("openssl")
            .args(["req", "-x509", "-newkey", "ec", "-nodes", "-days", "2"])
            .args(["-pkeyopt", "ec_paramgen_curve:prime256v1"])
            .args(["-subj", &format!("/CN={subject}")])
            .args(["-keyout", &format!("{name}.key")])
            .args(["-out", &format!("{name}.pem")])
            .args(more)
            .current_dir(folder)
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "{said}");
    };
    request("authority", "Authority of the ford", &[]);
    request("stranger", "Authority of nobody", &[]);
    let by_authority = ["-CA", "authority.pem", "-CAkey", "authority.key"];
    let of_host = [
        "-addext",
        "subjectAltName=DNS:localhost",
        "-addext",
        "basicConstraints=critical,CA:FALSE",
    ];
    request("server", "localhost", &[by_authority, of_host].concat());
}
