use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use std::sync::LazyLock;

use tallyhost::postgres::die_with_this_thread;

/// The one chromedriver of this test run.
pub static DRIVER: LazyLock<Driver> = LazyLock::new(Driver::start);

/// Debian's chromedriver on a free port; it ends with this process.
pub struct Driver {
    _child: Child,
    pub url: String,
}

impl Driver {
    fn start() -> Self {
        // On a thread of its own that lives as long as the process: the child dies with it.
        let (tell, told) = std::sync::mpsc::channel();
        std::thread::spawn(move || {
            let mut command = Command::new("chromedriver");
            command
                .arg("--port=0")
                .stdin(Stdio::null())
                .stdout(Stdio::piped())
                .stderr(Stdio::null());
            die_with_this_thread(&mut command);
            let mut child = command.spawn().expect("chromedriver is installed");
            let lines = BufReader::new(child.stdout.take().unwrap()).lines();
            let port = lines
                .map_while(Result::ok)
                .find_map(|line| port_in(&line))
                .expect("chromedriver tells its port");
            tell.send((child, port)).unwrap();
            loop {
                std::thread::park();
            }
        });
        let (child, port) = told.recv().unwrap();
        Self {
            _child: child,
            url: format!("http://127.0.0.1:{port}"),
        }
    }
}

/// "ChromeDriver was started successfully on port 41234."
fn port_in(line: &str) -> Option<u16> {
    let (_, port) = line.split_once("successfully on port ")?;
    port.trim_end_matches('.').parse().ok()
}
