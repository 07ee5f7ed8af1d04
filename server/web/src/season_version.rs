//! The response header `Season-Version`: the version that a change made. A client sends it to any process as
//! `at_least`, and reads nothing older.

use std::rc::Rc;

use actix_web::Error;
use actix_web::body::MessageBody;
use actix_web::dev::{Extensions, ServiceRequest, ServiceResponse};
use actix_web::http::header::{HeaderName, HeaderValue};
use actix_web::middleware::Next;
use actix_web::web::Data;
use app::App;

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
    let Some(app) = request.app_data::<Data<App>>() else {
        return next.call(request).await;
    };
    // In place of the worker's application: only the request's own knows what the request commits.
    let app = Data::new(app.for_request());
    let mut data = Extensions::new();
    data.insert(app.clone());
    let mut request = request;
    request.add_data_container(Rc::new(data));
    let mut response = next.call(request).await?;
    if let Some(version) = app.committed_version() {
        let headers = response.headers_mut();
        headers.insert(SEASON_VERSION, HeaderValue::from(version));
    }
    Ok(response)
}
