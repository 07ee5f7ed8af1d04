//! The error of the read service. The `web` crate renders it as a problem (RFC 9457).

use actix_web::http::StatusCode;
use actix_web::http::header::ALLOW;
use actix_web::{HttpResponse, ResponseError};
use app::Refusal;

use crate::http::response::allow_any_origin;

/// A response, or why there is none.
pub type ReadResult = Result<HttpResponse, ReadError>;

/// Why there is nothing to read.
#[derive(Debug, thiserror::Error)]
pub enum ReadError {
    /// 406: the client takes none of our formats.
    #[error("this is written in JSON or CSV")]
    NotAcceptable,
    /// 400: what is wrong with the query.
    #[error("{0}")]
    Invalid(&'static str),
    /// 405, with the methods that the address takes.
    #[error("this address takes {0}")]
    NotAllowed(&'static str),
    /// A refusal of the use case.
    #[error("{0:?}")]
    Refused(Refusal),
}

impl From<Refusal> for ReadError {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal)
    }
}

impl ResponseError for ReadError {
    fn status_code(&self) -> StatusCode {
        match self {
            Self::NotAcceptable => StatusCode::NOT_ACCEPTABLE,
            Self::Invalid(_) => StatusCode::BAD_REQUEST,
            Self::NotAllowed(_) => StatusCode::METHOD_NOT_ALLOWED,
            // A placeholder: `web` replaces the whole response by the refusal.
            Self::Refused(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    fn error_response(&self) -> HttpResponse {
        let mut response = HttpResponse::build(self.status_code());
        allow_any_origin(&mut response);
        match self {
            Self::NotAllowed(allowed) => {
                response.insert_header((ALLOW, *allowed));
            }
            Self::Refused(refusal) => {
                // `web` finds the refusal here and renders it like every other.
                response.extensions_mut().insert(refusal.clone());
            }
            Self::NotAcceptable | Self::Invalid(_) => {}
        }
        response.finish()
    }
}
