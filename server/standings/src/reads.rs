//! What is read of a season.

use std::pin::Pin;

use actix_web::dev::Payload;
use actix_web::web::{Data, Path, Query};
use actix_web::{Error, FromRequest, HttpRequest, HttpResponse};
use serde::de::DeserializeOwned;

use crate::addresses::{InSeason, OfNow, OfTable, OfWeek, OnePlayer, TableAsked};
use crate::answer::answer;
use crate::asked::Asked;
use crate::format::Format;
use crate::frozen;
use crate::resource::{Resource, Wanted};
use crate::seen::seen;
use crate::sheets::{Ledger, Pairings, PublicStandings, Results, Statistics, Tables, Weeks};
use crate::shelf::{Key, Shelf};
use crate::turned::Turned;

/// What a reader gets.
pub type Answer = Result<HttpResponse, Turned>;

/// One request for something of a season.
pub struct Asking<Q> {
    shelf: Data<Shelf>,
    path: Path<InSeason>,
    of: Query<Q>,
    request: HttpRequest,
}

impl<Q: DeserializeOwned + 'static> FromRequest for Asking<Q> {
    type Error = Error;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Error>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let parts = <(Data<Shelf>, Path<InSeason>, Query<Q>)>::from_request(request, payload);
        let request = request.clone();
        Box::pin(async move {
            let (shelf, path, of) = parts.await?;
            Ok(Self {
                shelf,
                path,
                of,
                request,
            })
        })
    }
}

impl<Q> Asking<Q> {
    async fn read(self, resource: Resource, at_least: Option<i64>) -> Answer {
        let format = Format::of(&self.path.ending, &self.request)?;
        self.read_as(Wanted { resource, format }, at_least).await
    }

    async fn read_as(self, wanted: Wanted, at_least: Option<i64>) -> Answer {
        read_page(self.shelf, self.path.key(), wanted, at_least, &self.request).await
    }
}

/// The page, with a note for the front of what was asked.
async fn read_page(
    shelf: Data<Shelf>,
    key: Key,
    wanted: Wanted,
    at_least: Option<i64>,
    request: &HttpRequest,
) -> Answer {
    if let Some(version) = seen(request.headers(), at_least) {
        shelf.catch_up(key, version).await?;
    }
    let (kept, page) = shelf.page(key, wanted).await?;
    let asked = Asked::new(shelf.into_inner(), &kept, wanted, request);
    let counts = asked.shelf.counts();
    let answer = answer(request.headers(), &page, asked.encoding, counts);
    let mut response = HttpResponse::from(answer.map_into_boxed_body());
    asked.shelf.tell_age(response.headers_mut());
    response.extensions_mut().insert(asked);
    Ok(response)
}

/// The table after a week, now or as it stood at a version. Ends in `.html`, the address is a page to
/// be framed.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/standings", tag = "public", security(()), params(InSeason, OfTable), responses(
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
pub async fn find_public_standings(asking: Asking<OfTable>) -> Answer {
    let at_least = asking.of.at_least;
    match asking.of.table()? {
        TableAsked::Now(week) => asking.read(Resource::Standings(week), at_least).await,
        TableAsked::At(week, version) => {
            let (shelf, path) = (&asking.shelf, &asking.path);
            frozen::standings(shelf, path, week, version, &asking.request).await
        }
    }
}

/// Every line behind a player's total, now or as it stood at a version.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/players/{player}/ledger", tag = "public", security(()), params(OnePlayer, OfTable), responses(
    (status = 200, description = "The lines, week by week", content(
        (Ledger = "application/json", example = json!({
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
    shelf: Data<Shelf>,
    path: Path<OnePlayer>,
    of: Query<OfTable>,
    request: HttpRequest,
) -> Answer {
    match of.table()? {
        TableAsked::Now(week) => {
            let wanted = Wanted {
                resource: Resource::Ledger(path.player(), week),
                format: Format::of(&path.ending, &request)?,
            };
            read_page(shelf, path.key(), wanted, of.at_least, &request).await
        }
        TableAsked::At(week, version) => {
            frozen::ledger(&shelf, &path, week, version, &request).await
        }
    }
}

/// Who meets whom, in all weeks or in one.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/pairings", tag = "public", security(()), params(InSeason, OfWeek), responses(
    (status = 200, description = "The games and byes of published rounds", content(
        (Pairings = "application/json", example = json!({
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
pub async fn list_public_pairings(asking: Asking<OfWeek>) -> Answer {
    let (week, at_least) = (asking.of.week()?, asking.of.at_least);
    asking.read(Resource::Pairings(week), at_least).await
}

/// What came of the games, in all weeks or in one, as far as it stands.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/results", tag = "public", security(()), params(InSeason, OfWeek), responses(
    (status = 200, description = "The games with what came of them", content(
        (Results = "application/json", example = json!({
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
pub async fn list_public_results(asking: Asking<OfWeek>) -> Answer {
    let (week, at_least) = (asking.of.week()?, asking.of.at_least);
    asking.read(Resource::Results(week), at_least).await
}

/// The weeks: caps, deadlines, nights, and the scenarios as far as they are revealed.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/weeks", tag = "public", security(()), params(InSeason, OfNow), responses(
    (status = 200, description = "The weeks in order", content(
        (Weeks = "application/json", example = json!({
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
pub async fn list_public_weeks(asking: Asking<OfNow>) -> Answer {
    let at_least = asking.of.at_least;
    asking.read(Resource::Weeks, at_least).await
}

/// Games by faction, role and scenario with their 95 % intervals, and everybody's rank over the weeks.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/statistics", tag = "public", security(()), params(InSeason, OfWeek), responses(
    (status = 200, description = "What the games have in common", content(
        (Statistics = "application/json", example = json!({
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
pub async fn find_public_statistics(asking: Asking<OfWeek>) -> Answer {
    let (week, at_least) = (asking.of.week()?, asking.of.at_least);
    asking.read(Resource::Statistics(week), at_least).await
}

/// The tables of closed weeks as they were kept: at the close, and at each act that changed one later.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/tables", tag = "public", security(()), params(InSeason, OfNow), responses(
    (status = 200, description = "Which tables there are, and where each is read", content(
        (Tables = "application/json", example = json!({
            "version": 52,
            "tables": [{
                "week": 3, "version": 41, "act": "close_week", "frozen_at": "2026-01-30T18:00:00Z",
                "address": "standings?week=3&version=41"
            }]
        })),
        (String = "text/csv", example = "week,version,act,frozen_at,address\r\n3,41,close_week,2026-01-30T18:00:00+00:00,standings?week=3&version=41\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn list_public_tables(asking: Asking<OfNow>) -> Answer {
    let at_least = asking.of.at_least;
    asking.read(Resource::Tables, at_least).await
}

/// A small picture of the week and who leads, for pages and signatures.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/badge.svg", tag = "public", security(()), params(InSeason, OfNow), responses(
    (status = 200, description = "The picture", content((String = "image/svg+xml", example = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>"))),
    (status = 304, description = "Not changed")))]
pub async fn find_public_badge(asking: Asking<OfNow>) -> Answer {
    let at_least = asking.of.at_least;
    let wanted = Wanted {
        resource: Resource::Badge,
        format: Format::Svg,
    };
    asking.read_as(wanted, at_least).await
}
