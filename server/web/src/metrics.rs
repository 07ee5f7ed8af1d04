//! Numbers for those who run the server, in the Prometheus text format.

use std::time::Instant;

use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::middleware::Next;
use actix_web::web::Data;
use actix_web::{Error, HttpResponse, get};
use prometheus::core::Collector;
use prometheus::{HistogramOpts, HistogramVec, IntCounterVec, Opts, Registry, TextEncoder};

/// Upper bounds in seconds: from a cached body to a password.
const SECONDS: [f64; 9] = [0.0005, 0.002, 0.005, 0.02, 0.05, 0.2, 0.5, 2.0, 5.0];

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
}

/// Middleware: counts each request under the pattern of its route, never under what a client typed.
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
        let method = request.method().as_str();
        let route = request.match_pattern();
        let route = route.as_deref().unwrap_or("none");
        let status = response.status();
        metrics
            .requests
            .with_label_values(&[method, route, status.as_str()])
            .inc();
        metrics
            .seconds
            .with_label_values(&[method, route])
            .observe(start.elapsed().as_secs_f64());
    }
    Ok(response)
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
