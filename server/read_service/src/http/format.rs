//! The format of a response: by the ending of the address, else by content negotiation.

use actix_web::HttpRequest;
use actix_web::http::header::{ACCEPT, Accept, Header};
use app::Refusal;
use messages::Language;

use crate::http::read_error::ReadError;

/// A format of response bodies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Format {
    Json,
    Csv,
    /// A page in a language.
    Html(Language),
    /// A picture in a language.
    Svg(Language),
}

impl Format {
    /// The value of `Content-Type` (RFC 8259, RFC 4180 and RFC 7111, HTML, SVG).
    pub fn media_type(self) -> &'static str {
        match self {
            Self::Json => "application/json",
            Self::Csv => "text/csv; charset=utf-8; header=present",
            Self::Html(_) => "text/html; charset=utf-8",
            Self::Svg(_) => "image/svg+xml",
        }
    }

    /// By the ending of the address, such as `.csv`, else JSON or CSV by `Accept`.
    ///
    /// # Errors
    /// 404 for an ending that is none of ours, 406 when the client takes neither.
    pub fn from_request(ending: &str, request: &HttpRequest) -> Result<Self, ReadError> {
        match ending {
            ".json" => Ok(Self::Json),
            ".csv" => Ok(Self::Csv),
            "" => Self::negotiate(request),
            _ => Self::in_language(ending).ok_or(Refusal::NotFound.into()),
        }
    }

    /// English by an ending such as `.html`, another language by one such as `.fr.html`.
    fn in_language(ending: &str) -> Option<Self> {
        let (language, ending) = ending.rsplit_once('.')?;
        let language = match language.strip_prefix('.') {
            None => Language::English,
            Some(tag) => Language::of_tag(tag)?,
        };
        match ending {
            "html" => Some(Self::Html(language)),
            "svg" => Some(Self::Svg(language)),
            _ => None,
        }
    }

    fn negotiate(request: &HttpRequest) -> Result<Self, ReadError> {
        if !request.headers().contains_key(ACCEPT) {
            return Ok(Self::Json);
        }
        let accepted = Accept::parse(request).map_err(|_| ReadError::NotAcceptable)?;
        let ranked = accepted.ranked();
        let first = ranked.iter().find_map(|range| match range.essence_str() {
            "*/*" | "application/*" | "application/json" => Some(Self::Json),
            "text/*" | "text/csv" => Some(Self::Csv),
            _ => None,
        });
        match first {
            Some(format) => Ok(format),
            None if ranked.is_empty() => Ok(Self::Json),
            None => Err(ReadError::NotAcceptable),
        }
    }
}
