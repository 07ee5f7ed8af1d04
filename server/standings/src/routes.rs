//! The addresses of the read service, in one table.

use std::future::ready;
use std::sync::Arc;

use actix_web::http::Method;
use actix_web::web::{Data, ServiceConfig, get, head, method, resource, scope, to};
use actix_web::{FromRequest, Handler, Resource as Address, Responder};

use crate::answer::answer;
use crate::asked::Asked;
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
            sheet!("/public/clubs/{club}/records/{record}"),
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
