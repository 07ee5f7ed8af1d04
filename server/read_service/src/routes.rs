//! The route table of the read service.

use std::future::ready;
use std::sync::Arc;

use actix_web::http::Method;
use actix_web::web::{Data, ServiceConfig, get, head, method, resource, scope, to};
use actix_web::{FromRequest, Handler, Resource as Address, Responder};

use crate::cache::page_cache::PageCache;
use crate::handlers::directory::list_public_seasons;
use crate::handlers::events::follow_season;
use crate::handlers::preflight::{READ_METHODS, preflight};
use crate::handlers::record::find_public_record;
use crate::handlers::season::{
    find_public_badge, find_public_ledger, find_public_standings, find_public_statistics,
    list_public_pairings, list_public_results, list_public_tables, list_public_weeks,
};
use crate::http::read_error::{ReadError, ReadResult};

/// A pattern whose ending names the format.
macro_rules! with_ending {
    ($path:literal) => {
        concat!($path, "{ending:(\\.json|\\.csv)?}")
    };
}

/// Adds all routes, over a cache.
pub fn configure(config: &mut ServiceConfig, cache: Arc<PageCache>) {
    config
        .app_data(Data::from(cache))
        .service(
            scope("/public/clubs/{club}/seasons/{season}")
                .service(read_resource(
                    "/standings{ending:(\\.json|\\.csv|(\\.[a-z][a-z])?\\.html)?}",
                    find_public_standings,
                ))
                .service(read_resource(
                    with_ending!("/pairings"),
                    list_public_pairings,
                ))
                .service(read_resource(with_ending!("/results"), list_public_results))
                .service(read_resource(with_ending!("/weeks"), list_public_weeks))
                .service(read_resource(
                    with_ending!("/statistics"),
                    find_public_statistics,
                ))
                .service(read_resource(with_ending!("/tables"), list_public_tables))
                .service(read_resource(
                    with_ending!("/players/{player}/ledger"),
                    find_public_ledger,
                ))
                .service(read_resource(
                    "/badge{ending:(\\.[a-z][a-z])?\\.svg}",
                    find_public_badge,
                ))
                .service(
                    resource("/events")
                        .route(get().to(follow_season))
                        .route(method(Method::OPTIONS).to(preflight))
                        .default_service(to(|| ready(not_allowed("GET, OPTIONS")))),
                ),
        )
        .service(read_resource(
            with_ending!("/public/clubs/{club}/records/{record:[0-9a-f-]+}"),
            find_public_record,
        ))
        .service(read_resource(
            with_ending!("/public/seasons"),
            list_public_seasons,
        ));
}

/// A resource that takes GET, HEAD and the CORS preflight.
fn read_resource<F, Args>(pattern: &str, handler: F) -> Address
where
    F: Handler<Args> + Clone,
    Args: FromRequest + 'static,
    F::Output: Responder + 'static,
{
    resource(pattern)
        .route(get().to(handler.clone()))
        .route(head().to(handler))
        .route(method(Method::OPTIONS).to(preflight))
        .default_service(to(|| ready(not_allowed(READ_METHODS))))
}

fn not_allowed(allowed: &'static str) -> ReadResult {
    Err(ReadError::NotAllowed(allowed))
}
