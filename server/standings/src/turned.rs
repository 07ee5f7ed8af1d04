//! What is turned away. The web gives it the form of all problems.

use actix_web::http::StatusCode;
use actix_web::http::header::ALLOW;
use actix_web::{HttpResponse, ResponseError};
use app::Refusal;

use crate::answer::open_to_all_sites;

/// Why there is no body.
#[derive(Debug, thiserror::Error)]
pub enum Turned {
    /// 406: none of our formats.
    #[error("this is written in JSON or CSV")]
    NotAcceptable,
    /// 400: what is wrong with the query.
    #[error("{0}")]
    Invalid(&'static str),
    /// 405: this is for reading. With the methods that the address takes.
    #[error("this address takes {0}")]
    NotAllowed(&'static str),
    /// What the league says.
    #[error("{0:?}")]
    Refused(Refusal),
}

impl From<Refusal> for Turned {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal)
    }
}

impl ResponseError for Turned {
    fn status_code(&self) -> StatusCode {
        match self {
            Self::NotAcceptable => StatusCode::NOT_ACCEPTABLE,
            Self::Invalid(_) => StatusCode::BAD_REQUEST,
            Self::NotAllowed(_) => StatusCode::METHOD_NOT_ALLOWED,
            // Until the web has given it its own.
            Self::Refused(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    fn error_response(&self) -> HttpResponse {
        let mut response = HttpResponse::build(self.status_code());
        open_to_all_sites(&mut response);
        match self {
            Self::NotAllowed(allowed) => {
                response.insert_header((ALLOW, *allowed));
            }
            Self::Refused(refusal) => {
                // The web tells it like every other.
                response.extensions_mut().insert(refusal.clone());
            }
            Self::NotAcceptable | Self::Invalid(_) => {}
        }
        response.finish()
    }
}
