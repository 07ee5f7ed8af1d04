//! Server-sent events (HTML Living Standard, section 9.2): a season's version whenever it rises.
//!
//! A client holds no more of this process than the number it has not read yet: of several versions
//! it hears the newest. Everything else it fetches, and finds it at that version or a newer one.

use std::convert::Infallible;
use std::time::Duration;

use actix_web::http::header::CACHE_CONTROL;
use actix_web::web::{Bytes, Data, Path};
use actix_web::{HttpRequest, HttpResponse};
use app::Refusal;
use futures_util::{Stream, stream};
use tokio::sync::watch;
use tokio::time::timeout;

use crate::addresses::InSeason;
use crate::answer::open_to_all_sites;
use crate::shelf::Shelf;
use crate::turned::Turned;

/// A comment is sent after this long without news, so that a proxy keeps the connection and a dead
/// client is noticed.
const SILENCE: Duration = Duration::from_secs(15);

/// How long a client waits before it comes again, in milliseconds.
const COME_AGAIN: u32 = 1000;

/// Each version of a season from now on; at once, where it is newer than `Last-Event-ID`.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/events", tag = "public", security(()),
    params(InSeason, ("Last-Event-ID" = Option<i64>, Header, description = "The version that was heard last")),
    responses((status = 200, description = "Server-sent events", content(
        (String = "text/event-stream", example = "id: 41\nevent: version\ndata: {\"version\":41}\n\n")))))]
pub async fn follow_season(
    shelf: Data<Shelf>,
    path: Path<InSeason>,
    request: HttpRequest,
) -> Result<HttpResponse, Turned> {
    let kept = shelf.season(path.key()).await?;
    if !shelf.is_open() {
        return Err(Refusal::Unavailable {
            retry_after: 1,
            cause: "the server is about to stop".to_owned(),
        }
        .into());
    }
    let news = kept.subscribe();
    let heard = last_heard(&request);
    let mut response = HttpResponse::Ok();
    response
        .content_type("text/event-stream")
        .insert_header((CACHE_CONTROL, "no-store"))
        .insert_header(("X-Accel-Buffering", "no"));
    open_to_all_sites(&mut response);
    Ok(response.streaming(versions(news, heard)))
}

/// What the client heard last, by its own word.
fn last_heard(request: &HttpRequest) -> Option<i64> {
    let header = request.headers().get("last-event-id")?;
    header.to_str().ok()?.trim().parse().ok()
}

fn versions(
    mut news: watch::Receiver<i64>,
    heard: Option<i64>,
) -> impl Stream<Item = Result<Bytes, Infallible>> {
    let now = *news.borrow_and_update();
    let is_news = heard.is_none_or(|heard| heard < now);
    let greeting = match is_news {
        true => format!("retry: {COME_AGAIN}\n{}", event(now)),
        false => format!("retry: {COME_AGAIN}\n\n"),
    };
    let first = stream::once(async move { Ok(Bytes::from(greeting)) });
    // Another process may have told of more than this one knows yet.
    let told = heard.map_or(now, |heard| heard.max(now));
    let rest = stream::unfold((news, told), |(mut news, told)| async move {
        let version = match timeout(SILENCE, news.changed()).await {
            Ok(Ok(())) => *news.borrow_and_update(),
            // Nobody may see the season any more, or the server stops.
            Ok(Err(_)) => return None,
            Err(_) => told,
        };
        let line = match version > told {
            true => Bytes::from(event(version)),
            false => Bytes::from_static(b":\n\n"),
        };
        Some((Ok(line), (news, told.max(version))))
    });
    stream::StreamExt::chain(first, rest)
}

fn event(version: i64) -> String {
    format!("id: {version}\nevent: version\ndata: {{\"version\":{version}}}\n\n")
}
