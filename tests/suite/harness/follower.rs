//! A client of server-sent events.

use std::io::{BufRead, BufReader};
use std::time::Duration;

use reqwest::blocking::{Client, Response};

use super::server::Server;

/// Somebody who follows a season by its events.
pub struct Follower(BufReader<Response>);

impl Follower {
    /// From now on, or from the version that was heard last.
    pub fn of(server: &Server, path: &str, last: Option<i64>) -> Self {
        let http = Client::builder()
            .no_proxy()
            .timeout(Duration::from_secs(60))
            .build()
            .unwrap();
        let mut request = http.get(format!("{}{path}", server.address()));
        if let Some(last) = last {
            request = request.header("last-event-id", last.to_string());
        }
        let response = request.send().unwrap();
        assert_eq!(response.headers()["content-type"], "text/event-stream");
        Self(BufReader::new(response))
    }

    /// The version of the next event; nothing once the stream has ended.
    pub fn next(&mut self) -> Option<i64> {
        let mut line = String::new();
        while self.0.read_line(&mut line).unwrap() > 0 {
            if let Some(id) = line.trim_end().strip_prefix("id: ") {
                return id.parse().ok();
            }
            line.clear();
        }
        None
    }
}
