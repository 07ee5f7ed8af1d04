//! The addresses of the read service, in one table.

use std::future::ready;
use std::sync::Arc;

use actix_web::http::Method;
use actix_web::web::{Data, ServiceConfig, get, head, method, resource, scope, to};
use actix_web::{FromRequest, Handler, Resource as Address, Responder};

use crate::directory::list_public_seasons;
use crate::events::follow_season;
use crate::preflight::{METHODS, allow_reading};
use crate::reads::{
    Answer, find_public_badge, find_public_ledger, find_public_standings, find_public_statistics,
    list_public_pairings, list_public_results, list_public_tables, list_public_weeks,
};
use crate::record::find_public_record;
use crate::shelf::Shelf;
use crate::turned::Turned;

/// How an address may end: the form of its body.
macro_rules! sheet {
    ($path:literal) => {
        concat!($path, "{ending:(\\.json|\\.csv)?}")
    };
}

/// All of them, over a shelf.
pub fn configure(config: &mut ServiceConfig, shelf: Arc<Shelf>) {
    config
        .app_data(Data::from(shelf))
        .service(
            scope("/public/clubs/{club}/seasons/{season}")
                .service(read(
                    "/standings{ending:(\\.json|\\.csv|\\.html)?}",
                    find_public_standings,
                ))
                .service(read(sheet!("/pairings"), list_public_pairings))
                .service(read(sheet!("/results"), list_public_results))
                .service(read(sheet!("/weeks"), list_public_weeks))
                .service(read(sheet!("/statistics"), find_public_statistics))
                .service(read(sheet!("/tables"), list_public_tables))
                .service(read(sheet!("/players/{player}/ledger"), find_public_ledger))
                .service(read("/badge.svg", find_public_badge))
                .service(
                    resource("/events")
                        .route(get().to(follow_season))
                        .route(method(Method::OPTIONS).to(allow_reading))
                        .default_service(to(|| ready(not_allowed("GET, OPTIONS")))),
                ),
        )
        .service(read(
            sheet!("/public/clubs/{club}/records/{record:[0-9a-f-]+}"),
            find_public_record,
        ))
        .service(read(sheet!("/public/seasons"), list_public_seasons));
}

/// Answers GET and, without the body, HEAD, and tells browsers that other sites may read, too.
fn read<F, Args>(pattern: &str, handler: F) -> Address
where
    F: Handler<Args> + Clone,
    Args: FromRequest + 'static,
    F::Output: Responder + 'static,
{
    resource(pattern)
        .route(get().to(handler.clone()))
        .route(head().to(handler))
        .route(method(Method::OPTIONS).to(allow_reading))
        .default_service(to(|| ready(not_allowed(METHODS))))
}

fn not_allowed(allowed: &'static str) -> Answer {
    Err(Turned::NotAllowed(allowed))
}
