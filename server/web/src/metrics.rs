//! Numbers for those who run the server, in the Prometheus text format.

use std::time::{Duration, Instant};

use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::StatusCode;
use actix_web::middleware::Next;
use actix_web::web::Data;
use actix_web::{Error, HttpResponse, get};
use prometheus::core::Collector;
use prometheus::{
    Histogram, HistogramOpts, HistogramVec, IntCounter, IntCounterVec, Opts, Registry, TextEncoder,
};

/// Upper bounds in seconds: from a cached body to a password.
const SECONDS: [f64; 9] = [0.0005, 0.002, 0.005, 0.02, 0.05, 0.2, 0.5, 2.0, 5.0];

/// The end of every address of a player's own list.
const OWN_LIST: &str = "/weeks/{week}/list";

/// The counts of one process, shared by its threads.
#[derive(Clone)]
pub struct Metrics {
    registry: Registry,
    requests: IntCounterVec,
    seconds: HistogramVec,
}

impl Metrics {
    /// Everything at nought.
    ///
    /// # Errors
    /// A name that is used twice.
    pub fn new() -> Result<Self, prometheus::Error> {
        let requests = IntCounterVec::new(
            Opts::new("http_requests_total", "Requests that were answered"),
            &["method", "route", "status"],
        )?;
        let seconds = HistogramVec::new(
            HistogramOpts::new("http_request_seconds", "Time from request to answer")
                .buckets(SECONDS.to_vec()),
            &["method", "route"],
        )?;
        let metrics = Self {
            registry: Registry::new(),
            requests,
            seconds,
        };
        metrics.add(metrics.requests.clone())?;
        metrics.add(metrics.seconds.clone())?;
        Ok(metrics)
    }

    /// Adds what another part of the process counts.
    ///
    /// # Errors
    /// A name that is used twice.
    pub fn add(&self, counts: impl Collector + 'static) -> Result<(), prometheus::Error> {
        self.registry.register(Box::new(counts))
    }

    /// What counts the answers with one status under the pattern of their route, never under what a
    /// client typed. To be kept where answers are many and quick: to find it takes longer than to count.
    pub fn counting(&self, method: &str, route: &str, status: StatusCode) -> Counting {
        let [method, route, status] = if is_of_own_list(route) {
            ["any", OWN_LIST, outcome(status)]
        } else {
            [method, route, status.as_str()]
        };
        Counting {
            requests: self.requests.with_label_values(&[method, route, status]),
            seconds: self.seconds.with_label_values(&[method, route]),
        }
    }
}

/// Counts the answers of one method, route and status.
#[derive(Clone)]
pub struct Counting {
    requests: IntCounter,
    seconds: Histogram,
}

impl Counting {
    /// An answer was given, after so long.
    pub fn note(&self, took: Duration) {
        self.requests.inc();
        self.seconds.observe(took.as_secs_f64());
    }
}

/// Middleware: counts each request.
///
/// # Errors
/// None of its own.
pub async fn count<B: MessageBody>(
    request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<B>, Error> {
    let start = Instant::now();
    let metrics = request.app_data::<Data<Metrics>>().cloned();
    let response = next.call(request).await?;
    if let Some(metrics) = metrics {
        let request = response.request();
        let route = request.match_pattern();
        let route = route.as_deref().unwrap_or("none");
        let method = request.method().as_str();
        metrics
            .counting(method, route, response.status())
            .note(start.elapsed());
    }
    Ok(response)
}

/// Whether an address is of a player's own list. These are counted as one: whoever watches the
/// numbers does not learn when a list was changed or handed in, only that a player looked at theirs or
/// did something to it.
fn is_of_own_list(route: &str) -> bool {
    let behind = route.split_once(OWN_LIST).map(|(_, behind)| behind);
    behind.is_some_and(|behind| behind.is_empty() || behind.starts_with('/'))
}

/// All that is told of such a request: sealed and checked lists look alike.
fn outcome(status: StatusCode) -> &'static str {
    match status.as_u16() {
        ..400 => "done",
        400..500 => "refused",
        _ => "failed",
    }
}

/// Every number of this process. The reverse proxy keeps it from the world.
#[get("/metrics")]
pub async fn list_metrics(metrics: Data<Metrics>) -> HttpResponse {
    match TextEncoder::new().encode_to_string(&metrics.registry.gather()) {
        Ok(text) => HttpResponse::Ok()
            .content_type("text/plain; version=0.0.4")
            .body(text),
        Err(_) => HttpResponse::InternalServerError().finish(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_player_does_with_a_list_is_one_thing() {
        let week = "/api/v1/clubs/{club}/seasons/{season}/weeks/{week}";
        for own in ["list", "list/draft", "list/seal", "list/check"] {
            assert!(is_of_own_list(&format!("{week}/{own}")), "{own}");
        }
        for other in ["lists", "lists/open", "late-leaves", "scenario"] {
            assert!(!is_of_own_list(&format!("{week}/{other}")), "{other}");
        }
        assert_eq!(outcome(StatusCode::CREATED), outcome(StatusCode::OK));
    }
}
