//! JSON request bodies, read strictly: type, size, syntax, then every field by name.

use std::future::Future;
use std::pin::Pin;
use std::time::Duration;

use actix_web::dev::Payload;
use actix_web::http::header::CONTENT_TYPE;
use actix_web::rt::time::timeout;
use actix_web::web::Bytes;
use actix_web::{FromRequest, HttpRequest, web};
use serde::de::DeserializeOwned;
use utoipa::ToSchema;

pub use crate::parse::parse;
use crate::problem::{Problem, WireFault};

/// Most bytes of a body, except where it says otherwise.
pub const MOST_BYTES: usize = 64 * 1024;
/// Most bytes of a catalogue.
pub const MOST_CATALOGUE_BYTES: usize = 4 * 1024 * 1024;

/// Most bytes of a photo.
pub const MOST_PHOTO_BYTES: usize = 10 * 1024 * 1024;

/// How long the body of a request may take to come.
const PATIENCE: Duration = Duration::from_secs(10);
/// How long that of a catalogue or a photo may take.
const PATIENCE_WITH_FILES: Duration = Duration::from_secs(120);

/// A JSON body of type `T`.
pub struct Json<T>(pub T);

/// The bytes of a catalogue, of whatever type.
pub struct CatalogueBytes(pub Bytes);

/// The bytes of a photo, whatever they are called.
#[derive(ToSchema)]
#[schema(value_type = String, format = Binary)]
pub struct PhotoBytes(pub Bytes);

impl FromRequest for PhotoBytes {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let bytes = collect_file(request, payload, MOST_PHOTO_BYTES);
        Box::pin(async move {
            let bytes = bytes.await?;
            if app::painting::is_picture(&bytes) {
                Ok(Self(bytes))
            } else {
                Err(Problem::wire(WireFault::UnsupportedMediaType))
            }
        })
    }
}

impl FromRequest for CatalogueBytes {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let bytes = collect_file(request, payload, MOST_CATALOGUE_BYTES);
        Box::pin(async move { bytes.await.map(Self) })
    }
}

impl<T: DeserializeOwned + 'static> FromRequest for Json<T> {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let kind = must_be_json(request);
        let bytes = collect(request, payload);
        Box::pin(async move {
            kind?;
            parse(&bytes.await?).map(Self)
        })
    }
}

/// The body of a request, of [`MOST_BYTES`] at most.
///
/// # Errors
/// 413 for more, 408 where it does not come in time.
pub fn collect(
    request: &HttpRequest,
    payload: &mut Payload,
) -> impl Future<Output = Result<Bytes, Problem>> + use<> {
    let bytes = Bytes::from_request(request, payload);
    in_time(PATIENCE, async move {
        bytes.await.map_err(|_| Problem::too_large(MOST_BYTES))
    })
}

/// The body of a request that brings a file of `most` bytes.
///
/// # Errors
/// As [`collect`].
pub fn collect_file(
    request: &HttpRequest,
    payload: &mut Payload,
    most: usize,
) -> impl Future<Output = Result<Bytes, Problem>> + use<> {
    let body = web::Payload::from_request(request, payload);
    file_in_time(async move {
        let too_large = || Problem::too_large(most);
        let body = body.await.map_err(|_| too_large())?;
        let read = body.to_bytes_limited(most).await;
        let read = read.map_err(|_| too_large())?;
        read.map_err(|_| Problem::wire(WireFault::InvalidParameter))
    })
}

/// What is read of a body with a file, if it comes in time.
///
/// # Errors
/// 408 where it does not, and those of `reading`.
pub async fn file_in_time<T>(
    reading: impl Future<Output = Result<T, Problem>>,
) -> Result<T, Problem> {
    in_time(PATIENCE_WITH_FILES, reading).await
}

async fn in_time<T>(
    patience: Duration,
    reading: impl Future<Output = Result<T, Problem>>,
) -> Result<T, Problem> {
    let late = |_| Problem::wire(WireFault::TooSlow);
    timeout(patience, reading).await.map_err(late)?
}

/// # Errors
/// 415 unless the body is declared as JSON in UTF-8.
pub fn must_be_json(request: &HttpRequest) -> Result<(), Problem> {
    if is_of_type(request, "application/json") {
        Ok(())
    } else {
        Err(Problem::wire(WireFault::UnsupportedMediaType))
    }
}

/// Whether the body is declared as CSV in UTF-8.
pub fn is_csv(request: &HttpRequest) -> bool {
    is_of_type(request, "text/csv")
}

fn is_of_type(request: &HttpRequest, wanted: &str) -> bool {
    let kind = request
        .headers()
        .get(CONTENT_TYPE)
        .and_then(|value| value.to_str().ok());
    kind.is_some_and(|kind| {
        let mut parts = kind.split(';').map(|part| part.trim().to_ascii_lowercase());
        parts.next().as_deref() == Some(wanted)
            && parts.all(|parameter| {
                let charset = parameter.strip_prefix("charset=");
                charset.is_none_or(|name| name.trim_matches('"') == "utf-8")
            })
    })
}
