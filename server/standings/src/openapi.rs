//! What the OpenAPI document says of the read service.

use utoipa::OpenApi;

use crate::{directory, events, reads, record};

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
        reads::find_public_standings,
        reads::find_public_ledger,
        reads::list_public_pairings,
        reads::list_public_results,
        reads::list_public_weeks,
        reads::find_public_statistics,
        reads::list_public_tables,
        reads::find_public_badge,
        events::follow_season,
    )
)]
struct Reads;

/// The addresses of the read service.
pub fn openapi() -> utoipa::openapi::OpenApi {
    Reads::openapi()
}
