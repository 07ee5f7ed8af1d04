//! The addresses of the read service, in one table.

use std::future::ready;
use std::sync::Arc;

use actix_web::web::{Data, Path, Query, ServiceConfig, get, head, resource, scope, to};
use actix_web::{Handler, HttpRequest, HttpResponse, Resource as Address, Responder};
use app::Refusal;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::week::WeekNo;
use serde::Deserialize;
use uuid::Uuid;

use crate::answer::answer;
use crate::asked::Asked;
use crate::events::follow_season;
use crate::format::Format;
use crate::resource::{Resource, Wanted};
use crate::shelf::{Key, Shelf};
use crate::turned::Turned;

/// All of them, over a shelf.
pub fn configure(config: &mut ServiceConfig, shelf: Arc<Shelf>) {
    config.app_data(Data::from(shelf)).service(
        scope("/public/clubs/{club}/seasons/{season}")
            .service(read(
                "/standings{ending:(\\.json|\\.csv|\\.html)?}",
                find_standings,
            ))
            .service(read("/pairings{ending:(\\.json|\\.csv)?}", list_pairings))
            .service(read("/results{ending:(\\.json|\\.csv)?}", list_results))
            .service(read("/weeks{ending:(\\.json|\\.csv)?}", list_weeks))
            .service(read(
                "/players/{player}/ledger{ending:(\\.json|\\.csv)?}",
                find_ledger,
            ))
            .service(read("/badge.svg", find_badge))
            .service(
                resource("/events")
                    .route(get().to(follow_season))
                    .default_service(to(|| ready(not_allowed("GET")))),
            ),
    );
}

/// Answers GET and, without the body, HEAD.
fn read<F, Args>(pattern: &str, handler: F) -> Address
where
    F: Handler<Args> + Clone,
    Args: actix_web::FromRequest + 'static,
    F::Output: Responder + 'static,
{
    resource(pattern)
        .route(get().to(handler.clone()))
        .route(head().to(handler))
        .default_service(to(|| ready(not_allowed("GET, HEAD"))))
}

fn not_allowed(allowed: &'static str) -> Answer {
    Err(Turned::NotAllowed(allowed))
}

/// A season's address.
#[derive(Deserialize)]
pub struct InSeason {
    club: Uuid,
    season: Uuid,
    #[serde(default)]
    ending: String,
}

impl InSeason {
    /// As the shelf knows it.
    pub fn key(&self) -> Key {
        (ClubId(self.club), SeasonId(self.season))
    }
}

/// A player's address.
#[derive(Deserialize)]
struct OnePlayer {
    club: Uuid,
    season: Uuid,
    player: Uuid,
    ending: String,
}

/// Which week.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct OfWeek {
    week: Option<u8>,
}

impl OfWeek {
    /// # Errors
    /// 404 for a number that no season has.
    fn week(&self) -> Result<Option<WeekNo>, Turned> {
        let number = |week| WeekNo::new(week).ok_or(Turned::Refused(Refusal::NotFound));
        self.week.map(number).transpose()
    }
}

type Answer = Result<HttpResponse, Turned>;

async fn find(
    shelf: Data<Shelf>,
    season: &InSeason,
    of: Resource,
    request: &HttpRequest,
) -> Answer {
    let format = Format::of(&season.ending, request)?;
    let wanted = Wanted {
        resource: of,
        format,
    };
    read_page(shelf, season.key(), wanted, request).await
}

/// The page, with a note for the front of what was asked.
async fn read_page(shelf: Data<Shelf>, key: Key, wanted: Wanted, request: &HttpRequest) -> Answer {
    let (kept, page) = shelf.page(key, wanted).await?;
    let asked = Asked::new(shelf.into_inner(), &kept, wanted, request);
    let counts = asked.shelf.counts();
    let answer = answer(request.headers(), &page, asked.encoding, counts);
    let mut response = HttpResponse::from(answer.map_into_boxed_body());
    response.extensions_mut().insert(asked);
    Ok(response)
}

async fn find_standings(
    shelf: Data<Shelf>,
    path: Path<InSeason>,
    of: Query<OfWeek>,
    request: HttpRequest,
) -> Answer {
    find(shelf, &path, Resource::Standings(of.week()?), &request).await
}

async fn list_pairings(
    shelf: Data<Shelf>,
    path: Path<InSeason>,
    of: Query<OfWeek>,
    request: HttpRequest,
) -> Answer {
    find(shelf, &path, Resource::Pairings(of.week()?), &request).await
}

async fn list_results(
    shelf: Data<Shelf>,
    path: Path<InSeason>,
    of: Query<OfWeek>,
    request: HttpRequest,
) -> Answer {
    find(shelf, &path, Resource::Results(of.week()?), &request).await
}

async fn list_weeks(shelf: Data<Shelf>, path: Path<InSeason>, request: HttpRequest) -> Answer {
    find(shelf, &path, Resource::Weeks, &request).await
}

async fn find_ledger(
    shelf: Data<Shelf>,
    path: Path<OnePlayer>,
    of: Query<OfWeek>,
    request: HttpRequest,
) -> Answer {
    let path = path.into_inner();
    let resource = Resource::Ledger(PlayerId(path.player), of.week()?);
    let season = InSeason {
        club: path.club,
        season: path.season,
        ending: path.ending,
    };
    find(shelf, &season, resource, &request).await
}

async fn find_badge(shelf: Data<Shelf>, path: Path<InSeason>, request: HttpRequest) -> Answer {
    let wanted = Wanted {
        resource: Resource::Badge,
        format: Format::Svg,
    };
    read_page(shelf, path.key(), wanted, &request).await
}
