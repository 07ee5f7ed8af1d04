//! Assembles the actix application: shared state, extractor errors, routes and middleware.

use actix_web::Error;
use actix_web::dev::{ServiceFactory, ServiceRequest, ServiceResponse};
use actix_web::middleware::from_fn;
use actix_web::web::{Data, PathConfig, PayloadConfig, QueryConfig, ServiceConfig};
use app::App;
use tracing_actix_web::TracingLogger;

use crate::allowed_methods::unmatched_route;
use crate::body::MAX_BODY_BYTES;
use crate::change_limit::{self, ChangeLimit};
use crate::health::Draining;
use crate::metrics::{self, Metrics};
use crate::problem::{self, HttpFault, Problem};
use crate::public_url::PublicUrl;
use crate::request_span::RequestSpan;
use crate::{parse, routes, season_version, security_headers};

/// The HTTP application of one worker, with the routes of every process and those of its role. Middleware runs
/// from the last `wrap` to the first.
pub fn build_app(
    app: App,
    metrics: Metrics,
    draining: Draining,
    change_limit: ChangeLimit,
    public_url: PublicUrl,
    role: impl FnOnce(&mut ServiceConfig),
) -> actix_web::App<
    impl ServiceFactory<
        ServiceRequest,
        Config = (),
        Response = ServiceResponse<impl actix_web::body::MessageBody>,
        Error = Error,
        InitError = (),
    >,
> {
    actix_web::App::new()
        .app_data(Data::new(app))
        .app_data(Data::new(metrics))
        .app_data(Data::new(draining))
        .app_data(Data::new(change_limit))
        .app_data(Data::new(public_url))
        .app_data(PayloadConfig::new(MAX_BODY_BYTES))
        .app_data(
            PathConfig::default().error_handler(|_, _| Problem::http(HttpFault::NotFound).into()),
        )
        .app_data(
            QueryConfig::default()
                .error_handler(|cause, _| parse::invalid_query(&cause.to_string()).into()),
        )
        .configure(role)
        .configure(routes::configure_process)
        .default_service(actix_web::web::to(unmatched_route))
        .wrap(from_fn(season_version::add_season_version))
        .wrap(from_fn(change_limit::limit_changes))
        .wrap(from_fn(problem::render))
        .wrap(from_fn(security_headers::add_security_headers))
        .wrap(from_fn(metrics::count_request))
        .wrap(TracingLogger::<RequestSpan>::new())
}
