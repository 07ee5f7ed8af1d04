//! A form that may bring a file along (RFC 7578). The extractor asks for a session before it reads a file, and
//! verifies the CSRF token.

use messages::{Message, requests};
use std::future::Future;
use std::pin::Pin;

use actix_multipart::{Field, Multipart};
use actix_web::dev::Payload;
use actix_web::web::{Bytes, BytesMut};
use actix_web::{FromRequest, HttpMessage, HttpRequest};
use futures_util::TryStreamExt;

use super::csrf;
use super::form_data::FormData;
use super::page_request::PageRequest;
use crate::body::{MAX_PHOTO_BYTES, with_file_timeout};
use crate::problem::{HttpFault, Problem};

/// Most bytes of a field that is no file.
const MAX_FIELD_BYTES: usize = 16 * 1024;
/// Most fields; no form of ours has so many.
const MAX_FIELDS: usize = 40;

/// Extractor: the fields of a form, and the file that was chosen.
pub struct MultipartForm {
    pub fields: FormData,
    /// The file, unless none was chosen.
    pub file: Option<Bytes>,
}

impl FromRequest for MultipartForm {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        if !is_multipart(request) {
            let fields = FormData::from_request(request, payload);
            return Box::pin(async move {
                let fields = fields.await?;
                Ok(Self { fields, file: None })
            });
        }
        let request = request.clone();
        let parts = Multipart::new(request.headers(), payload.take());
        Box::pin(async move {
            PageRequest::extract(&request).await?.actor()?;
            let form = with_file_timeout(read_parts(parts)).await?;
            csrf::verify(&request, form.fields.text(csrf::FIELD))?;
            Ok(form)
        })
    }
}

fn is_multipart(request: &HttpRequest) -> bool {
    request
        .content_type()
        .eq_ignore_ascii_case("multipart/form-data")
}

async fn read_parts(mut parts: Multipart) -> Result<MultipartForm, Problem> {
    let unreadable = |_| Problem::http(HttpFault::InvalidParameter);
    let (mut fields, mut file) = (Vec::new(), None);
    while let Some(part) = parts.try_next().await.map_err(unreadable)? {
        // A part without a name is of no field that a form asks for.
        let name = part.name().unwrap_or("").to_owned();
        let is_file = part
            .content_disposition()
            .is_some_and(|disposition| disposition.get_filename().is_some());
        if is_file && file.is_none() {
            file = Some(read_part(part, MAX_PHOTO_BYTES).await?);
        } else if is_file {
            return Err(malformed(requests::form_files()));
        } else if fields.len() < MAX_FIELDS {
            let bytes = read_part(part, MAX_FIELD_BYTES).await?;
            let text = String::from_utf8(bytes.to_vec());
            let text = text.map_err(|_| Problem::http(HttpFault::InvalidParameter))?;
            fields.push((name, text));
        } else {
            return Err(malformed(requests::form_fields()));
        }
    }
    Ok(MultipartForm {
        fields: FormData::from_pairs(fields),
        file: file.filter(|bytes| !bytes.is_empty()),
    })
}

fn malformed(detail: Message) -> Problem {
    Problem::http(HttpFault::InvalidParameter).detail(detail)
}

async fn read_part(mut part: Field, limit: usize) -> Result<Bytes, Problem> {
    let unreadable = |_| Problem::http(HttpFault::InvalidParameter);
    let mut bytes = BytesMut::new();
    while let Some(chunk) = part.try_next().await.map_err(unreadable)? {
        if bytes.len() + chunk.len() > limit {
            return Err(Problem::too_large(limit));
        }
        bytes.extend_from_slice(&chunk);
    }
    Ok(bytes.freeze())
}
