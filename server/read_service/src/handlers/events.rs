//! Handler: server-sent events (HTML Living Standard, section 9.2), a season's version whenever it rises.
//!
//! No queue is kept for a slow client, only the newest version: of several it receives the last. Everything
//! else it fetches, and finds it at that version or a newer one.

use std::convert::Infallible;
use std::time::Duration;

use actix_web::http::header::CACHE_CONTROL;
use actix_web::web::{Bytes, Data, Path};
use actix_web::{HttpRequest, HttpResponse};
use app::Refusal;
use futures_util::{Stream, stream};
use tokio::sync::watch;
use tokio::time::timeout;

use crate::cache::page_cache::PageCache;
use crate::http::parameters::PublicSeasonPath;
use crate::http::read_error::ReadError;
use crate::http::response::allow_any_origin;

/// A comment is sent after this long without an event, so that a proxy keeps the connection and a dead client
/// is noticed.
const KEEP_ALIVE: Duration = Duration::from_secs(15);

/// How long a client waits before it reconnects, in milliseconds.
const RETRY_MILLIS: u32 = 1000;

/// Each version of a season from now on; at once, where it is newer than `Last-Event-ID`.
#[utoipa::path(get, path = "/public/clubs/{club}/seasons/{season}/events", tag = "public", security(()),
    params(PublicSeasonPath, ("Last-Event-ID" = Option<i64>, Header, description = "The version that was heard last")),
    responses((status = 200, description = "Server-sent events", content(
        (String = "text/event-stream", example = "id: 41\nevent: version\ndata: {\"version\":41}\n\n")))))]
pub async fn follow_season(
    cache: Data<PageCache>,
    path: Path<PublicSeasonPath>,
    request: HttpRequest,
) -> Result<HttpResponse, ReadError> {
    let entry = cache.confirmed_entry(path.key()).await?;
    if !cache.accepts_streams() {
        return Err(Refusal::unavailable(1, "the server is about to stop").into());
    }
    let receiver = entry.subscribe();
    let last_seen = last_event_id(&request);
    let mut response = HttpResponse::Ok();
    response
        .content_type("text/event-stream")
        .insert_header((CACHE_CONTROL, "no-store"))
        .insert_header(("X-Accel-Buffering", "no"));
    allow_any_origin(&mut response);
    Ok(response.streaming(version_events(receiver, last_seen)))
}

/// `Last-Event-ID`, where the client sends one.
fn last_event_id(request: &HttpRequest) -> Option<i64> {
    let header = request.headers().get("last-event-id")?;
    header.to_str().ok()?.trim().parse().ok()
}

fn version_events(
    mut receiver: watch::Receiver<i64>,
    last_seen: Option<i64>,
) -> impl Stream<Item = Result<Bytes, Infallible>> {
    let now = *receiver.borrow_and_update();
    let is_newer = last_seen.is_none_or(|last_seen| last_seen < now);
    let greeting = match is_newer {
        true => format!("retry: {RETRY_MILLIS}\n{}", event(now)),
        false => format!("retry: {RETRY_MILLIS}\n\n"),
    };
    let first = stream::once(async move { Ok(Bytes::from(greeting)) });
    // Another process may have sent a newer version than this one knows yet.
    let sent = last_seen.map_or(now, |last_seen| last_seen.max(now));
    let rest = stream::unfold((receiver, sent), |(mut receiver, sent)| async move {
        let version = match timeout(KEEP_ALIVE, receiver.changed()).await {
            Ok(Ok(())) => *receiver.borrow_and_update(),
            // The season was evicted: hidden, or the server stops.
            Ok(Err(_)) => return None,
            Err(_) => sent,
        };
        let line = match version > sent {
            true => Bytes::from(event(version)),
            false => Bytes::from_static(b":\n\n"),
        };
        Some((Ok(line), (receiver, sent.max(version))))
    });
    stream::StreamExt::chain(first, rest)
}

fn event(version: i64) -> String {
    format!("id: {version}\nevent: version\ndata: {{\"version\":{version}}}\n\n")
}
