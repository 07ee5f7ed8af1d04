//! Handlers: what everybody reads of one season, from the page cache.

use league::keys::SeasonKey;
use std::pin::Pin;

use actix_web::dev::Payload;
use actix_web::web::{Data, Path, Query};
use actix_web::{Error, FromRequest, HttpRequest, HttpResponse};
use serde::de::DeserializeOwned;

use crate::cache::page_cache::PageCache;
use crate::fast_path::resolved_request::ResolvedRequest;
use crate::handlers::past;
use crate::http::format::Format;
use crate::http::parameters::{
    CurrentQuery, PublicPlayerPath, PublicSeasonPath, PublicWeekQuery, RequestedTable, TableQuery,
};
use crate::http::read_error::ReadResult;
use crate::http::response::respond;
use crate::resources::{PageKey, Resource};
use crate::resources::{
    PublicLedger, PublicPairings, PublicResults, PublicStandings, PublicStatistics, PublicTables,
    PublicWeeks,
};

/// Extractor: a request below the address of a season, with its query `Q`.
pub struct SeasonRequest<Q> {
    cache: Data<PageCache>,
    path: Path<PublicSeasonPath>,
    query: Query<Q>,
    request: HttpRequest,
}

impl<Q: DeserializeOwned + 'static> FromRequest for SeasonRequest<Q> {
    type Error = Error;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Error>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let parts =
            <(Data<PageCache>, Path<PublicSeasonPath>, Query<Q>)>::from_request(request, payload);
        let request = request.clone();
        Box::pin(async move {
            let (cache, path, query) = parts.await?;
            Ok(Self {
                cache,
                path,
                query,
                request,
            })
        })
    }
}

impl<Q> SeasonRequest<Q> {
    async fn read(self, resource: Resource, at_least: Option<i64>) -> ReadResult {
        let format = Format::from_request(&self.path.ending, &self.request)?;
        let page_key = PageKey { resource, format };
        read_page(
            self.cache,
            self.path.key(),
            page_key,
            at_least,
            &self.request,
        )
        .await
    }
}

/// Responds with a page, and notes for the fast path what the request resolved to.
async fn read_page(
    cache: Data<PageCache>,
    key: SeasonKey,
    page_key: PageKey,
    at_least: Option<i64>,
    request: &HttpRequest,
) -> ReadResult {
    cache.satisfy(key, request.headers(), at_least).await?;
    let (entry, page) = cache.page(key, page_key).await?;
    let resolved = ResolvedRequest::new(cache.into_inner(), &entry, page_key, request);
    let counters = resolved.cache.counters();
    let response = respond(request.headers(), &page, resolved.encoding, counters);
    let mut response = HttpResponse::from(response.map_into_boxed_body());
    resolved.cache.add_age_header(response.headers_mut());
    response.extensions_mut().insert(resolved);
    Ok(response)
}

/// The table after a week, now or as it stood at a version. Ends in `.html`, the address is a page to
/// be framed, in English; `.de.html` and so on are the same in another language.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/standings", tag = "public", security(()), params(PublicSeasonPath, TableQuery), responses(
    (status = 200, description = "The table", content(
        (PublicStandings = "application/json", example = json!({
            "version": 41, "season": "Ford under Lamps", "as_of": 3,
            "tie_breaks": ["direct_encounter", "opponents_score"],
            "rows": [{
                "handle": "Corvanel", "faction": "sodwether-moot", "rank": 1, "shared": false,
                "player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e60", "active": true, "total": 31, "movement": 1,
                "sums": {"game": 24, "painting": 7}, "record": {"won": 2, "drawn": 1, "lost": 0, "unplayed": 0},
                "tie_breaks": [null, "9/2"],
                "weeks": [{"week": 1, "points": 10, "counts": true}]
            }]
        })),
        (String = "text/csv", example = "rank,player,faction,active,total,movement,won,drawn,lost,unplayed,week_1\r\n1,Corvanel,sodwether-moot,true,31,1,2,1,0,0,10\r\n")
    ), headers(("ETag" = String, description = "Begins with the season's version; send it back as `If-None-Match`, and nothing older is answered"))),
    (status = 304, description = "Not changed")))]
pub async fn find_public_standings(request: SeasonRequest<TableQuery>) -> ReadResult {
    let at_least = request.query.at_least;
    match request.query.table()? {
        RequestedTable::Now(week) => request.read(Resource::Standings(week), at_least).await,
        RequestedTable::AsOf(week, version) => {
            let (cache, path) = (&request.cache, &request.path);
            past::standings(cache, path, week, version, &request.request).await
        }
    }
}

/// Every line behind a player's total, now or as it stood at a version.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/players/{player}/ledger", tag = "public", security(()), params(PublicPlayerPath, TableQuery), responses(
    (status = 200, description = "The lines, week by week", content(
        (PublicLedger = "application/json", example = json!({
            "version": 41, "as_of": 3, "handle": "Corvanel", "total": 31,
            "lines": [{
                "player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e60", "week": 1, "kind": "attendance", "amount": 1,
                "reason": {"kind": "attended"}, "sentence": "came to the table",
                "source": {"kind": "game", "id": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e70"}, "version": 1
            }]
        })),
        (String = "text/csv", example = "week,kind,amount,sentence,version,source,source_id\r\n1,attendance,1,came to the table,1,game,0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e70\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn find_public_ledger(
    cache: Data<PageCache>,
    path: Path<PublicPlayerPath>,
    query: Query<TableQuery>,
    request: HttpRequest,
) -> ReadResult {
    match query.table()? {
        RequestedTable::Now(week) => {
            let page_key = PageKey {
                resource: Resource::Ledger(path.player(), week),
                format: Format::from_request(&path.ending, &request)?,
            };
            read_page(cache, path.key(), page_key, query.at_least, &request).await
        }
        RequestedTable::AsOf(week, version) => {
            past::ledger(&cache, &path, week, version, &request).await
        }
    }
}

/// Who meets whom, in all weeks or in one.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/pairings", tag = "public", security(()), params(PublicSeasonPath, PublicWeekQuery), responses(
    (status = 200, description = "The games and byes of published rounds", content(
        (PublicPairings = "application/json", example = json!({
            "version": 41,
            "games": [{
                "game": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e61", "week": 3, "round": 1, "night": "tue", "table": 2,
                "first": {"player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e60", "handle": "Corvanel", "faction": "sodwether-moot"},
                "second": {"player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e62", "handle": "Oskrel", "faction": "vesper-orrery"}
            }]
        })),
        (String = "text/csv", example = "week,round,night,table,first,first_faction,second,second_faction,game\r\n3,1,tue,2,Corvanel,sodwether-moot,Oskrel,vesper-orrery,0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e61\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn list_public_pairings(request: SeasonRequest<PublicWeekQuery>) -> ReadResult {
    let (week, at_least) = (request.query.week()?, request.query.at_least);
    request.read(Resource::Pairings(week), at_least).await
}

/// What came of the games, in all weeks or in one, as far as it stands.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/results", tag = "public", security(()), params(PublicSeasonPath, PublicWeekQuery), responses(
    (status = 200, description = "The games with what came of them", content(
        (PublicResults = "application/json", example = json!({
            "version": 41,
            "games": [{
                "game": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e61", "week": 3, "round": 1, "night": "tue", "table": 2,
                "first": {"player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e60", "handle": "Corvanel", "faction": "sodwether-moot"},
                "second": {"player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e62", "handle": "Oskrel", "faction": "vesper-orrery"},
                "state": "open"
            }]
        })),
        (String = "text/csv", example = "week,round,night,table,first,first_faction,second,second_faction,game,state,first_score,second_score\r\n3,1,tue,2,Corvanel,sodwether-moot,Oskrel,vesper-orrery,0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e61,confirmed,14,6\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn list_public_results(request: SeasonRequest<PublicWeekQuery>) -> ReadResult {
    let (week, at_least) = (request.query.week()?, request.query.at_least);
    request.read(Resource::Results(week), at_least).await
}

/// The weeks: caps, deadlines, nights, and the scenarios as far as they are revealed.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/weeks", tag = "public", security(()), params(PublicSeasonPath, CurrentQuery), responses(
    (status = 200, description = "The weeks in order", content(
        (PublicWeeks = "application/json", example = json!({
            "version": 41,
            "weeks": [{
                "week": 3, "cap": 600, "phase": "announced", "announce_at": "2026-01-22T17:00:00Z",
                "lists_due_at": "2026-01-26T19:00:00Z", "lists_accepted_until": "2026-01-26T20:00:00Z",
                "play_until_at": "2026-01-29T22:00:00Z",
                "nights": [{"key": "tue", "begins_at": "2026-01-27T18:00:00Z", "tables": 6}],
                "scenario": {"kind": "title", "title": "The toll at the ford"}
            }]
        })),
        (String = "text/csv", example = "week,cap,phase,announce_at,lists_due_at,lists_accepted_until,play_until_at,scenario\r\n3,600,announced,2026-01-22T17:00:00+00:00,2026-01-26T19:00:00+00:00,2026-01-26T20:00:00+00:00,2026-01-29T22:00:00+00:00,The toll at the ford\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn list_public_weeks(request: SeasonRequest<CurrentQuery>) -> ReadResult {
    let at_least = request.query.at_least;
    request.read(Resource::Weeks, at_least).await
}

/// Games by faction, role and scenario with their 95 % intervals, and everybody's rank over the weeks.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/statistics", tag = "public", security(()), params(PublicSeasonPath, PublicWeekQuery), responses(
    (status = 200, description = "What the games have in common", content(
        (PublicStatistics = "application/json", example = json!({
            "version": 41, "as_of": 3, "fewest_games": 10,
            "factions": [{
                "key": "vesper-orrery", "won": 7, "drawn": 1, "lost": 4, "too_few": false,
                "win_share": {"successes": 7, "trials": 12, "low": 0.32, "high": 0.81}
            }],
            "roles": [], "scenarios": [],
            "ranks": [{"player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e60", "handle": "Corvanel", "ranks": [2, 2, 1]}]
        })),
        (String = "text/csv", example = "by,key,won,drawn,lost,share_low,share_high,mean_margin\r\nfaction,vesper-orrery,7,1,4,0.3195,0.8067,3/2\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn find_public_statistics(request: SeasonRequest<PublicWeekQuery>) -> ReadResult {
    let (week, at_least) = (request.query.week()?, request.query.at_least);
    request.read(Resource::Statistics(week), at_least).await
}

/// The tables of closed weeks as they were kept: at the close, and at each act that changed one later.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/tables", tag = "public", security(()), params(PublicSeasonPath, CurrentQuery), responses(
    (status = 200, description = "Which tables there are, and where each is read", content(
        (PublicTables = "application/json", example = json!({
            "version": 52,
            "tables": [{
                "week": 3, "version": 41, "act": "close_week", "frozen_at": "2026-01-30T18:00:00Z",
                "address": "standings?week=3&version=41"
            }]
        })),
        (String = "text/csv", example = "week,version,act,frozen_at,address\r\n3,41,close_week,2026-01-30T18:00:00+00:00,standings?week=3&version=41\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn list_public_tables(request: SeasonRequest<CurrentQuery>) -> ReadResult {
    let at_least = request.query.at_least;
    request.read(Resource::Tables, at_least).await
}

/// A small picture of the week and who leads, for pages and signatures; in another language at
/// `badge.de.svg` and so on.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/badge.svg", tag = "public", security(()), params(PublicSeasonPath, CurrentQuery), responses(
    (status = 200, description = "The picture", content((String = "image/svg+xml", example = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>"))),
    (status = 304, description = "Not changed")))]
pub async fn find_public_badge(request: SeasonRequest<CurrentQuery>) -> ReadResult {
    let at_least = request.query.at_least;
    request.read(Resource::Badge, at_least).await
}
