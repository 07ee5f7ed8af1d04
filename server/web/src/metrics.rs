//! Metrics in the Prometheus text format.

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
const DURATION_BUCKETS: [f64; 9] = [0.0005, 0.002, 0.005, 0.02, 0.05, 0.2, 0.5, 2.0, 5.0];

/// The end of every address of a player's own list.
const OWN_LIST: &str = "/weeks/{week}/list";

/// The metrics of one process, shared by its threads.
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
                .buckets(DURATION_BUCKETS.to_vec()),
            &["method", "route"],
        )?;
        let metrics = Self {
            registry: Registry::new(),
            requests,
            seconds,
        };
        metrics.register(metrics.requests.clone())?;
        metrics.register(metrics.seconds.clone())?;
        Ok(metrics)
    }

    /// Registers the metrics of another part of the process.
    ///
    /// # Errors
    /// A name that is used twice.
    pub fn register(&self, collector: impl Collector + 'static) -> Result<(), prometheus::Error> {
        self.registry.register(Box::new(collector))
    }

    /// The counter of responses with one status, labelled with the pattern of their route, never with what a client
    /// typed. Hold on to it on hot paths: to look it up takes longer than to count.
    pub fn request_counter(&self, method: &str, route: &str, status: StatusCode) -> RequestCounter {
        let [method, route, status] = if is_of_own_list(route) {
            ["any", OWN_LIST, coarse_status(status)]
        } else {
            [method, route, status.as_str()]
        };
        RequestCounter {
            requests: self.requests.with_label_values(&[method, route, status]),
            seconds: self.seconds.with_label_values(&[method, route]),
        }
    }
}

/// Counts the responses of one method, route and status.
#[derive(Clone)]
pub struct RequestCounter {
    requests: IntCounter,
    seconds: Histogram,
}

impl RequestCounter {
    /// Counts one response, given after `took`.
    pub fn record(&self, took: Duration) {
        self.requests.inc();
        self.seconds.observe(took.as_secs_f64());
    }
}

/// Middleware: counts each request.
///
/// # Errors
/// None of its own.
pub async fn count_request<B: MessageBody>(
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
            .request_counter(method, route, response.status())
            .record(start.elapsed());
    }
    Ok(response)
}

/// Whether a route is of a player's own list. These are counted as one: the metrics must not tell when a list was
/// changed or handed in, only that a player read or changed theirs.
fn is_of_own_list(route: &str) -> bool {
    let rest = route.split_once(OWN_LIST).map(|(_, rest)| rest);
    rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
}

/// All that is counted of such a request: sealed and checked lists look alike.
fn coarse_status(status: StatusCode) -> &'static str {
    match status.as_u16() {
        ..400 => "done",
        400..500 => "refused",
        _ => "failed",
    }
}

/// Every number of this process, on a listener of its own: it tells how much is going on, which is for those
/// who run the server alone.
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
        assert_eq!(
            coarse_status(StatusCode::CREATED),
            coarse_status(StatusCode::OK)
        );
    }
}
