//! How a resource is written: by the ending of its address, else by `Accept`.

use actix_web::HttpRequest;
use actix_web::http::header::{ACCEPT, Accept, Header};
use app::Refusal;

use crate::turned::Turned;

/// How a body is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Format {
    Json,
    Csv,
    Html,
    Svg,
}

impl Format {
    /// As `Content-Type` says it (RFC 8259, RFC 4180 and RFC 7111, HTML, SVG).
    pub fn media_type(self) -> &'static str {
        match self {
            Self::Json => "application/json",
            Self::Csv => "text/csv; charset=utf-8; header=present",
            Self::Html => "text/html; charset=utf-8",
            Self::Svg => "image/svg+xml",
        }
    }

    /// By the ending of the address, such as `.csv`, else JSON or CSV by `Accept`.
    ///
    /// # Errors
    /// 404 for an ending that is none of ours, 406 when the client takes neither.
    pub fn of(ending: &str, request: &HttpRequest) -> Result<Self, Turned> {
        match ending {
            ".json" => Ok(Self::Json),
            ".csv" => Ok(Self::Csv),
            ".html" => Ok(Self::Html),
            "" => Self::accepted(request),
            _ => Err(Refusal::NotFound.into()),
        }
    }

    fn accepted(request: &HttpRequest) -> Result<Self, Turned> {
        if !request.headers().contains_key(ACCEPT) {
            return Ok(Self::Json);
        }
        let accepted = Accept::parse(request).map_err(|_| Turned::NotAcceptable)?;
        let ranked = accepted.ranked();
        let first = ranked.iter().find_map(|range| match range.essence_str() {
            "*/*" | "application/*" | "application/json" => Some(Self::Json),
            "text/*" | "text/csv" => Some(Self::Csv),
            _ => None,
        });
        match first {
            Some(format) => Ok(format),
            None if ranked.is_empty() => Ok(Self::Json),
            None => Err(Turned::NotAcceptable),
        }
    }
}
