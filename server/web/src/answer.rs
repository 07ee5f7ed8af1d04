//! The shapes of success.

use actix_web::http::header::{ETag, EntityTag, LOCATION};
use actix_web::{HttpRequest, HttpResponse, Responder, body::BoxBody};
use serde::Serialize;

use crate::problem::Problem;

/// What a handler answers.
pub type Answer<T> = Result<T, Problem>;

/// 201 with the new thing and where it is found.
pub struct Created<T> {
    /// Address of the new thing.
    pub location: String,
    /// The new thing.
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

/// 204: done, and nothing to say.
pub struct Done;

impl Responder for Done {
    type Body = BoxBody;

    fn respond_to(self, _: &HttpRequest) -> HttpResponse {
        HttpResponse::NoContent().finish()
    }
}

/// 202: taken in; the answer deliberately tells no more.
pub struct Taken;

impl Responder for Taken {
    type Body = BoxBody;

    fn respond_to(self, _: &HttpRequest) -> HttpResponse {
        HttpResponse::Accepted().finish()
    }
}

/// 200 with the version as `ETag`, to be sent back as `If-Match`.
pub struct Versioned<T> {
    /// The version.
    pub version: i64,
    /// The thing.
    pub view: T,
}

impl<T: Serialize> Responder for Versioned<T> {
    type Body = BoxBody;

    fn respond_to(self, _: &HttpRequest) -> HttpResponse {
        let tag = EntityTag::new_strong(self.version.to_string());
        HttpResponse::Ok().insert_header(ETag(tag)).json(self.view)
    }
}
