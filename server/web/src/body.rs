//! Request bodies: limits of size and time, media type, strict JSON.

use std::future::Future;
use std::pin::Pin;
use std::time::Duration;

use actix_web::dev::Payload;
use actix_web::error::PayloadError;
use actix_web::http::header::CONTENT_TYPE;
use actix_web::rt::time::timeout;
use actix_web::web::Bytes;
use actix_web::{FromRequest, HttpRequest, web};
use serde::de::DeserializeOwned;
use utoipa::ToSchema;

pub use crate::parse::parse;
use crate::problem::{HttpFault, Problem};

/// Bytes of a body at most, unless stated otherwise.
pub const MAX_BODY_BYTES: usize = 64 * 1024;
/// Bytes of a catalogue at most.
pub const MAX_CATALOGUE_BYTES: usize = 4 * 1024 * 1024;

/// Bytes of a photo at most.
pub const MAX_PHOTO_BYTES: usize = 10 * 1024 * 1024;

/// How long the body of a request may take to come.
const BODY_TIMEOUT: Duration = Duration::from_secs(10);
/// How long that of a catalogue or a photo may take.
const FILE_TIMEOUT: Duration = Duration::from_secs(120);

/// Extractor: a JSON body of type `T`.
pub struct Json<T>(pub T);

/// Extractor: the bytes of a catalogue, JSON or CSV.
pub struct CatalogueBytes(pub Bytes);

/// The bytes of a photo, whatever they are called.
#[derive(ToSchema)]
#[schema(value_type = String, format = Binary)]
pub struct PhotoBytes(pub Bytes);

impl FromRequest for PhotoBytes {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let bytes = read_file_body(request, payload, MAX_PHOTO_BYTES);
        Box::pin(async move {
            let bytes = bytes.await?;
            if app::painting::is_picture(&bytes) {
                Ok(Self(bytes))
            } else {
                Err(Problem::http(HttpFault::UnsupportedMediaType))
            }
        })
    }
}

impl FromRequest for CatalogueBytes {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let bytes = read_file_body(request, payload, MAX_CATALOGUE_BYTES);
        Box::pin(async move { bytes.await.map(Self) })
    }
}

impl<T: DeserializeOwned + 'static> FromRequest for Json<T> {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let kind = require_json(request);
        let bytes = read_body(request, payload);
        Box::pin(async move {
            kind?;
            parse(&bytes.await?).map(Self)
        })
    }
}

/// The body of a request, of [`MAX_BODY_BYTES`] at most.
///
/// # Errors
/// 413 for more, 400 where it breaks off or its chunks are wrong, 408 where it does not come in time.
pub fn read_body(
    request: &HttpRequest,
    payload: &mut Payload,
) -> impl Future<Output = Result<Bytes, Problem>> + use<> {
    let bytes = Bytes::from_request(request, payload);
    with_timeout(BODY_TIMEOUT, async move {
        bytes
            .await
            .map_err(|error| match error.as_error::<PayloadError>() {
                Some(PayloadError::Overflow) => Problem::too_large(MAX_BODY_BYTES),
                _ => Problem::http(HttpFault::BrokenBody),
            })
    })
}

/// The body of a request that brings a file of at most `limit` bytes.
///
/// # Errors
/// As [`read_body`].
pub fn read_file_body(
    request: &HttpRequest,
    payload: &mut Payload,
    limit: usize,
) -> impl Future<Output = Result<Bytes, Problem>> + use<> {
    let body = web::Payload::from_request(request, payload);
    with_file_timeout(async move {
        let broken = || Problem::http(HttpFault::BrokenBody);
        let body = body.await.map_err(|_| broken())?;
        let read = body.to_bytes_limited(limit).await;
        let read = read.map_err(|_| Problem::too_large(limit))?;
        read.map_err(|_| broken())
    })
}

/// Applies [`FILE_TIMEOUT`] to reading a body with a file.
///
/// # Errors
/// 408 where it does not, and those of `reading`.
pub async fn with_file_timeout<T>(
    reading: impl Future<Output = Result<T, Problem>>,
) -> Result<T, Problem> {
    with_timeout(FILE_TIMEOUT, reading).await
}

async fn with_timeout<T>(
    limit: Duration,
    reading: impl Future<Output = Result<T, Problem>>,
) -> Result<T, Problem> {
    let late = |_| Problem::http(HttpFault::TooSlow);
    timeout(limit, reading).await.map_err(late)?
}

/// # Errors
/// 415 unless the body is declared as JSON in UTF-8.
pub fn require_json(request: &HttpRequest) -> Result<(), Problem> {
    if has_media_type(request, "application/json") {
        Ok(())
    } else {
        Err(Problem::http(HttpFault::UnsupportedMediaType))
    }
}

/// Whether the body is declared as CSV in UTF-8.
pub fn is_csv(request: &HttpRequest) -> bool {
    has_media_type(request, "text/csv")
}

fn has_media_type(request: &HttpRequest, wanted: &str) -> bool {
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
