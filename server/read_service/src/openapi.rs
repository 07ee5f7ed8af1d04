//! The part of the OpenAPI document that describes the read service.

use utoipa::OpenApi;

use crate::handlers::{directory, events, record, season};

#[derive(OpenApi)]
#[openapi(
    tags((
        name = "public",
        description = "What everybody may see, without an account and from every site. JSON or CSV by \
            `Accept`, or by the address's ending `.json` or `.csv`. Whoever sends back a version it has \
            seen, as `at_least` or in `If-None-Match`, is answered with nothing older, or with 503 \
            and `Retry-After` while the process that is asked has not got so far."
    )),
    paths(
        directory::list_public_seasons,
        record::find_public_record,
        season::find_public_standings,
        season::find_public_ledger,
        season::list_public_pairings,
        season::list_public_results,
        season::list_public_weeks,
        season::find_public_statistics,
        season::list_public_tables,
        season::find_public_badge,
        events::follow_season,
    )
)]
struct PublicReads;

/// The OpenAPI document of the read service alone.
pub fn openapi() -> utoipa::openapi::OpenApi {
    PublicReads::openapi()
}
