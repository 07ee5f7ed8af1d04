//! The door of the server: what every request passes on its way to a route.

use actix_web::dev::{ServiceFactory, ServiceRequest, ServiceResponse};
use actix_web::middleware::from_fn;
use actix_web::web::{Data, PathConfig, PayloadConfig, QueryConfig, ServiceConfig};
use actix_web::{App, Error};
use app::Desk;
use tracing_actix_web::TracingLogger;

use crate::body::MOST_BYTES;
use crate::health::Leaving;
use crate::limits::{self, Limits};
use crate::methods::nothing_here;
use crate::metrics::{self, Metrics};
use crate::problem::{self, Problem, WireFault};
use crate::public_address::PublicAddress;
use crate::span::RequestSpan;
use crate::{headers, parse, routes, season_version};

/// The whole application over a desk, for a server to serve: the routes that watch the process, and
/// those of its role.
pub fn server_parts(
    desk: Desk,
    metrics: Metrics,
    leaving: Leaving,
    limits: Limits,
    public: PublicAddress,
    role: impl FnOnce(&mut ServiceConfig),
) -> App<
    impl ServiceFactory<
        ServiceRequest,
        Config = (),
        Response = ServiceResponse<impl actix_web::body::MessageBody>,
        Error = Error,
        InitError = (),
    >,
> {
    App::new()
        .app_data(Data::new(desk))
        .app_data(Data::new(metrics))
        .app_data(Data::new(leaving))
        .app_data(Data::new(limits))
        .app_data(Data::new(public))
        .app_data(PayloadConfig::new(MOST_BYTES))
        .app_data(
            PathConfig::default().error_handler(|_, _| Problem::wire(WireFault::NotFound).into()),
        )
        .app_data(
            QueryConfig::default()
                .error_handler(|cause, _| parse::misfit_of_query(&cause.to_string()).into()),
        )
        .configure(role)
        .configure(routes::watch)
        .default_service(actix_web::web::to(nothing_here))
        .wrap(from_fn(season_version::tell))
        .wrap(from_fn(limits::hold))
        .wrap(from_fn(problem::render))
        .wrap(from_fn(headers::add))
        .wrap(from_fn(metrics::count))
        .wrap(TracingLogger::<RequestSpan>::new())
}
