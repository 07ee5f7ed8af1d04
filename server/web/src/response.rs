//! Successful responses of the API.

use actix_web::http::header::{ETag, EntityTag, LOCATION};
use actix_web::{HttpRequest, HttpResponse, Responder, body::BoxBody};
use serde::Serialize;

use crate::problem::Problem;

/// The result of an API handler.
pub type ApiResult<T> = Result<T, Problem>;

/// 201 with what was created and its address.
pub struct Created<T> {
    pub location: String,
    pub view: T,
}

impl<T: Serialize> Responder for Created<T> {
    type Body = BoxBody;

    fn respond_to(self, _: &HttpRequest) -> HttpResponse {
        HttpResponse::Created()
            .insert_header((LOCATION, self.location))
            .json(self.view)
    }
}

/// 204: done.
pub struct NoContent;

impl Responder for NoContent {
    type Body = BoxBody;

    fn respond_to(self, _: &HttpRequest) -> HttpResponse {
        HttpResponse::NoContent().finish()
    }
}

/// 202: deliberately says no more, such as whether an account exists.
pub struct Accepted;

impl Responder for Accepted {
    type Body = BoxBody;

    fn respond_to(self, _: &HttpRequest) -> HttpResponse {
        HttpResponse::Accepted().finish()
    }
}

/// 200 with the version as `ETag`, to be sent back as `If-Match`.
pub struct Versioned<T> {
    pub version: i64,
    pub view: T,
}

impl<T: Serialize> Responder for Versioned<T> {
    type Body = BoxBody;

    fn respond_to(self, _: &HttpRequest) -> HttpResponse {
        let tag = EntityTag::new_strong(self.version.to_string());
        HttpResponse::Ok().insert_header(ETag(tag)).json(self.view)
    }
}
