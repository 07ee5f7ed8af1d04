//! The response header `Season-Version`: the version that a change made. A client sends it to any process as
//! `at_least`, and reads nothing older.

use actix_web::Error;
use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::header::{HeaderName, HeaderValue};
use actix_web::middleware::Next;

const SEASON_VERSION: HeaderName = HeaderName::from_static("season-version");

/// Middleware: adds the header to each response to a request that made a version.
///
/// # Errors
/// None of its own.
pub async fn add_season_version<B: MessageBody>(
    request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<B>, Error> {
    if request.method().is_safe() {
        return next.call(request).await;
    }
    let (answer, changes) = app::committing(next.call(request)).await;
    let mut response = answer?;
    if let Some(change) = changes.last() {
        let version = HeaderValue::from(change.version);
        response.headers_mut().insert(SEASON_VERSION, version);
    }
    Ok(response)
}
