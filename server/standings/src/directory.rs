//! The directory of public seasons, in pages.

use actix_web::HttpRequest;
use actix_web::http::header::{HeaderValue, LINK};
use actix_web::web::{Data, Path, Query};
use app::seasons::{self, Place};
use league::ids::SeasonId;
use league::time::Instant;
use serde::Deserialize;
use utoipa::IntoParams;

use crate::format::Format;
use crate::once::answer_once;
use crate::reads::Answer;
use crate::resource::write;
use crate::sheets::Seasons;
use crate::shelf::Shelf;
use crate::turned::Turned;

/// Seasons of a page, where nothing is said.
const USUAL: u16 = 20;

/// Seasons of a page at most.
const MOST: u16 = 100;

/// Characters of a search at most.
const LONGEST: usize = 100;

/// How the address ends.
#[derive(Deserialize)]
pub struct Ending {
    ending: String,
}

/// A page of the directory.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct Sought {
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
#[utoipa::path(get, path = "/public/seasons", tag = "public", security(()), params(Sought), responses(
    (status = 200, description = "A page of the directory", content(
        (Seasons = "application/json", example = json!({
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
    shelf: Data<Shelf>,
    path: Path<Ending>,
    sought: Query<Sought>,
    request: HttpRequest,
) -> Answer {
    let format = Format::of(&path.ending, &request)?;
    let limit = sought.limit.unwrap_or(USUAL);
    let search = &sought.search;
    let searched = search.chars().count() <= LONGEST && !search.contains(char::is_control);
    if !(1..=MOST).contains(&limit) || !searched {
        return Err(Turned::Invalid(
            "1 to 100 seasons a page, 100 characters of search, none of them for control",
        ));
    }
    let after = sought.after.as_deref().map(place).transpose()?;
    shelf.must_be_current().await?;
    let page = seasons::list_public_seasons(shelf.desk(), search, after, limit).await?;
    let next = page.next.map(cursor);
    let link = next.as_ref().map(|next| link(&request, next));
    let body = write(&Seasons::of(page, next), format)?;
    let mut response = answer_once(&request, format, body);
    if let Some(Ok(link)) = link {
        response.headers_mut().insert(LINK, link);
    }
    Ok(response)
}

/// A place as text: microseconds of the Unix epoch and the season.
fn cursor(place: Place) -> String {
    format!("{}.{}", place.started_at.timestamp_micros(), place.season)
}

fn place(cursor: &str) -> Result<Place, Turned> {
    let read = || {
        let (micros, season) = cursor.split_once('.')?;
        Some(Place {
            started_at: Instant::from_timestamp_micros(micros.parse().ok()?)?,
            season: SeasonId(season.parse().ok()?),
        })
    };
    read().ok_or(Turned::Invalid("this is no place in the directory"))
}

/// RFC 8288: the same question, after this page.
fn link(
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
        let there = Place {
            started_at: Instant::from_timestamp_micros(1_767_891_600_000_001).unwrap(),
            season: SeasonId(Uuid::from_u128(7)),
        };
        assert_eq!(place(&cursor(there)).unwrap(), there);
        for wrong in ["", "7", "x.y", "1.2", "9223372036854775807.0-0"] {
            assert!(place(wrong).is_err(), "{wrong}");
        }
    }
}
