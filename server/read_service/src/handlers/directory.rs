//! Handler: the directory of public seasons, page by page.

use actix_web::HttpRequest;
use actix_web::http::header::{HeaderValue, LINK};
use actix_web::web::{Data, Path, Query};
use app::seasons::{self, DirectoryCursor};
use league::ids::SeasonId;
use league::time::Instant;
use serde::Deserialize;
use utoipa::IntoParams;

use crate::cache::page_cache::PageCache;
use crate::http::format::Format;
use crate::http::read_error::ReadError;
use crate::http::read_error::ReadResult;
use crate::http::uncached_response::respond_uncached;
use crate::resources::PublicSeasons;
use crate::resources::render_rows;

/// Seasons of a page, unless the query says otherwise.
const DEFAULT_LIMIT: u16 = 20;

/// Seasons of a page at most.
const MAX_LIMIT: u16 = 100;

/// Characters of a search at most.
const MAX_SEARCH_CHARS: usize = 100;

/// Path: the ending that names the format.
#[derive(Deserialize)]
pub struct DirectoryPath {
    ending: String,
}

/// A page of the directory.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct DirectoryQuery {
    /// A part of the season's or the club's name, in any case.
    #[param(max_length = 100, example = "lamplit")]
    #[serde(default)]
    search: String,
    /// `next` of the page before.
    #[param(example = "1767891600000000.0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63")]
    after: Option<String>,
    /// Seasons of a page.
    #[param(minimum = 1, maximum = 100, default = 20)]
    limit: Option<u16>,
}

/// The seasons that everybody may see, the newest start first.
#[utoipa::path(get, path = "/public/seasons", tag = "public", security(()), params(DirectoryQuery), responses(
    (status = 200, description = "A page of the directory", content(
        (PublicSeasons = "application/json", example = json!({
            "seasons": [{
                "club": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64", "club_name": "Lamplit Ford gaming circle",
                "season": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63", "name": "Ford under Lamps", "is_final": false,
                "started_at": "2026-01-05T12:00:00Z",
                "address": "/public/clubs/0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64/seasons/0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63"
            }]
        })),
        (String = "text/csv", example = "club,club_name,season,name,is_final,started_at,ended_at,address\r\n0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64,Lamplit Ford gaming circle,0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63,Ford under Lamps,false,2026-01-05T12:00:00+00:00,,/public/clubs/0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64/seasons/0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63\r\n")
    ), headers(("Link" = String, description = "The address of the next page, with `rel=\"next\"`"))),
    (status = 304, description = "Not changed")))]
pub async fn list_public_seasons(
    cache: Data<PageCache>,
    path: Path<DirectoryPath>,
    query: Query<DirectoryQuery>,
    request: HttpRequest,
) -> ReadResult {
    let format = Format::from_request(&path.ending, &request)?;
    let limit = query.limit.unwrap_or(DEFAULT_LIMIT);
    let search = &query.search;
    let is_valid_search =
        search.chars().count() <= MAX_SEARCH_CHARS && !search.contains(char::is_control);
    if !(1..=MAX_LIMIT).contains(&limit) || !is_valid_search {
        return Err(ReadError::Invalid(
            "1 to 100 seasons a page, 100 characters of search, none of them for control",
        ));
    }
    let after = query.after.as_deref().map(parse_cursor).transpose()?;
    cache.ensure_current().await?;
    let page = seasons::list_public_seasons(cache.app(), search, after, limit).await?;
    let next = page.next.map(format_cursor);
    let link = next.as_ref().map(|next| next_link(&request, next));
    let body = render_rows(&PublicSeasons::new(page, next), format)?;
    let mut response = respond_uncached(&request, format, body);
    if let Some(Ok(link)) = link {
        response.headers_mut().insert(LINK, link);
    }
    Ok(response)
}

/// The cursor as text: microseconds of the Unix epoch and the season.
fn format_cursor(place: DirectoryCursor) -> String {
    format!("{}.{}", place.started_at.timestamp_micros(), place.season)
}

fn parse_cursor(cursor: &str) -> Result<DirectoryCursor, ReadError> {
    let read = || {
        let (micros, season) = cursor.split_once('.')?;
        Some(DirectoryCursor {
            started_at: Instant::from_timestamp_micros(micros.parse().ok()?)?,
            season: SeasonId(season.parse().ok()?),
        })
    };
    read().ok_or(ReadError::Invalid("this is no place in the directory"))
}

/// `Link` (RFC 8288): the same query, after this page.
fn next_link(
    request: &HttpRequest,
    next: &str,
) -> Result<HeaderValue, actix_web::http::header::InvalidHeaderValue> {
    let path = request.path();
    let rest = request.query_string().split('&');
    let rest = rest.filter(|part| !part.is_empty() && !part.starts_with("after="));
    let rest: String = rest.map(|part| format!("&{part}")).collect();
    HeaderValue::from_str(&format!("<{path}?after={next}{rest}>; rel=\"next\""))
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    #[test]
    fn a_cursor_leads_back_to_its_place() {
        let there = DirectoryCursor {
            started_at: Instant::from_timestamp_micros(1_767_891_600_000_001).unwrap(),
            season: SeasonId(Uuid::from_u128(7)),
        };
        assert_eq!(parse_cursor(&format_cursor(there)).unwrap(), there);
        for wrong in ["", "7", "x.y", "1.2", "9223372036854775807.0-0"] {
            assert!(parse_cursor(wrong).is_err(), "{wrong}");
        }
    }
}
