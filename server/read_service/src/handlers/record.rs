//! Handler: a person's record over the public seasons of a club, with that person's consent.

use actix_web::HttpRequest;
use actix_web::web::{Data, Path};
use app::Refusal;
use app::clubs::list_record_places;
use league::keys::SeasonKey;

use crate::cache::page_cache::PageCache;
use crate::http::content_encoding::ContentEncoding;
use crate::http::format::Format;
use crate::http::parameters::RecordPath;
use crate::http::read_error::ReadResult;
use crate::http::uncached_response::respond_uncached;
use crate::resources::{PageKey, Resource, render_rows};
use crate::resources::{PublicPlace, PublicRecord};

/// A player's record over the seasons of a club, where the player agrees that everybody reads it.
#[utoipa::path(get, path = "/public/clubs/{club}/records/{record}", tag = "public", security(()), params(RecordPath), responses(
    (status = 200, description = "The places in every public season, the newest first", content(
        (PublicRecord = "application/json", example = json!({
            "games": {"won": 9, "drawn": 2, "lost": 5, "unplayed": 1},
            "places": [{
                "season": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63", "name": "Ford under Lamps", "is_final": true,
                "as_of": 8, "player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e60", "handle": "Corvanel",
                "faction": "sodwether-moot", "rank": 1, "of": 18, "total": 86,
                "record": {"won": 6, "drawn": 1, "lost": 1, "unplayed": 0}
            }]
        })),
        (String = "text/csv", example = "season,name,is_final,as_of,player,faction,rank,of,total,won,drawn,lost,unplayed\r\n0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63,Ford under Lamps,true,8,Corvanel,sodwether-moot,1,18,86,6,1,1,0\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn find_public_record(
    cache: Data<PageCache>,
    path: Path<RecordPath>,
    request: HttpRequest,
) -> ReadResult {
    let format = Format::from_request(&path.ending, &request)?;
    let mut places = Vec::new();
    for (season, player) in list_record_places(cache.app(), path.club(), path.record).await? {
        let place = find_place(&cache, season, Resource::Place(player)).await?;
        places.extend(place);
    }
    let body = render_rows(&PublicRecord::from_places(places), format)?;
    Ok(respond_uncached(&request, format, body))
}

/// Read from the season's cached page, so that it is as fresh as the table.
async fn find_place(
    cache: &PageCache,
    key: SeasonKey,
    resource: Resource,
) -> Result<Option<PublicPlace>, Refusal> {
    let page_key = PageKey {
        resource,
        format: Format::Json,
    };
    match cache.page(key, page_key).await {
        Ok((_, page)) => {
            let body = &page
                .encoded_for(ContentEncoding::Identity, cache.counters())
                .bytes;
            let place = serde_json::from_slice(body);
            place
                .map(Some)
                .map_err(|cause| Refusal::Internal(cause.to_string()))
        }
        // The player left before the first week, or the season was hidden meanwhile.
        Err(Refusal::NotFound) => Ok(None),
        Err(refusal) => Err(refusal),
    }
}
