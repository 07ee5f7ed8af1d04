//! A form of ours that may bring a file along (RFC 7578): read for whoever has signed in, and checked
//! for where it came from.

use std::future::Future;
use std::pin::Pin;

use actix_multipart::{Field, Multipart};
use actix_web::dev::Payload;
use actix_web::web::{Bytes, BytesMut};
use actix_web::{FromRequest, HttpMessage, HttpRequest};
use futures_util::TryStreamExt;

use super::csrf;
use super::fields::Fields;
use super::visit::Visit;
use crate::body::{MOST_PHOTO_BYTES, file_in_time};
use crate::problem::{Problem, WireFault};

/// Most bytes of a field that is no file.
const MOST_FIELD_BYTES: usize = 16 * 1024;
/// More fields than any form of ours has.
const MOST_FIELDS: usize = 40;

/// What was typed, and the file that was chosen.
pub struct Upload {
    /// The fields.
    pub fields: Fields,
    /// The file, unless none was chosen.
    pub file: Option<Bytes>,
}

impl FromRequest for Upload {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        if !brings_parts(request) {
            let fields = Fields::from_request(request, payload);
            return Box::pin(async move {
                let fields = fields.await?;
                Ok(Self { fields, file: None })
            });
        }
        let request = request.clone();
        let parts = Multipart::new(request.headers(), payload.take());
        Box::pin(async move {
            Visit::extract(&request).await?.actor()?;
            let upload = file_in_time(read(parts)).await?;
            csrf::check(&request, upload.fields.text(csrf::FIELD))?;
            Ok(upload)
        })
    }
}

fn brings_parts(request: &HttpRequest) -> bool {
    request
        .content_type()
        .eq_ignore_ascii_case("multipart/form-data")
}

async fn read(mut parts: Multipart) -> Result<Upload, Problem> {
    let unreadable = |_| Problem::wire(WireFault::InvalidParameter);
    let (mut fields, mut file) = (Vec::new(), None);
    while let Some(part) = parts.try_next().await.map_err(unreadable)? {
        let name = part.name().unwrap_or_default().to_owned();
        let is_file = part
            .content_disposition()
            .is_some_and(|disposition| disposition.get_filename().is_some());
        if is_file && file.is_none() {
            file = Some(all_of(part, MOST_PHOTO_BYTES).await?);
        } else if is_file {
            return Err(unlike_ours("The form takes one file."));
        } else if fields.len() < MOST_FIELDS {
            let bytes = all_of(part, MOST_FIELD_BYTES).await?;
            let text = String::from_utf8(bytes.to_vec());
            let text = text.map_err(|_| Problem::wire(WireFault::InvalidParameter))?;
            fields.push((name, text));
        } else {
            return Err(unlike_ours("The form has fewer fields."));
        }
    }
    Ok(Upload {
        fields: Fields::of(fields),
        file: file.filter(|bytes| !bytes.is_empty()),
    })
}

fn unlike_ours(detail: &'static str) -> Problem {
    Problem::wire(WireFault::InvalidParameter).detail(detail)
}

async fn all_of(mut part: Field, most: usize) -> Result<Bytes, Problem> {
    let unreadable = |_| Problem::wire(WireFault::InvalidParameter);
    let mut bytes = BytesMut::new();
    while let Some(chunk) = part.try_next().await.map_err(unreadable)? {
        if bytes.len() + chunk.len() > most {
            return Err(Problem::too_large(most));
        }
        bytes.extend_from_slice(&chunk);
    }
    Ok(bytes.freeze())
}
