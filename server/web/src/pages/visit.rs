//! Who reads a page, in which language, and what every page shows around its own matter.

use std::fmt;
use std::future::Future;
use std::pin::Pin;

use actix_web::cookie::Cookie;
use actix_web::dev::Payload;
use actix_web::http::header::ACCEPT_LANGUAGE;
use actix_web::{FromRequest, HttpRequest, web};
use app::{Actor, Desk, Refusal, Viewer};

use super::coding::Coding;
use super::texts::{ENGLISH, GERMAN, Texts};
use super::{assets, cookie, csrf};
use crate::problem::Problem;

/// One request for a page.
pub struct Visit {
    /// Whoever asks.
    pub viewer: Viewer,
    /// The words of the reader's language.
    pub t: &'static Texts,
    path: String,
    coding: Option<Coding>,
    secret: Option<String>,
    new_visit: Option<Cookie<'static>>,
}

/// What every page has around its own matter.
pub struct Frame {
    /// Whether somebody is signed in.
    pub signed_in: bool,
    /// For the forms of this answer.
    pub token: String,
    /// The address that was asked for.
    pub path: String,
    /// Address of the stylesheet.
    pub style: &'static str,
    /// Address of the script.
    pub script: &'static str,
    /// Address of the mark.
    pub icon: &'static str,
    pub(super) coding: Option<Coding>,
    pub(super) new_visit: Option<Cookie<'static>>,
}

impl Frame {
    /// The field that proves that a form is ours.
    pub fn hidden(&self) -> Hidden<'_> {
        Hidden(&self.token)
    }
}

/// A hidden field with the frame's token.
pub struct Hidden<'f>(&'f str);

impl fmt::Display for Hidden<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (name, token) = (csrf::FIELD, self.0);
        write!(
            f,
            "<input type=\"hidden\" name=\"{name}\" value=\"{token}\">"
        )
    }
}

/// A token is made of hexadecimal digits and a full stop.
impl askama::filters::HtmlSafe for Hidden<'_> {}

impl FromRequest for Visit {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let request = request.clone();
        Box::pin(async move {
            let desk = request.app_data::<web::Data<Desk>>();
            let desk = desk.ok_or_else(|| Refusal::Broken("no desk".to_owned()))?;
            let viewer = match cookie::sent(&request, cookie::SESSION) {
                Some(secret) => app::accounts::authenticate_page(desk, &secret).await?,
                None => None,
            };
            Ok(Self::new(&request, viewer))
        })
    }
}

impl Visit {
    fn new(request: &HttpRequest, viewer: Viewer) -> Self {
        let known = csrf::secret_of(request);
        let fresh = if known.is_none() { csrf::draw() } else { None };
        let new_visit = fresh.clone();
        Self {
            viewer,
            t: language(request),
            path: request.uri().to_string(),
            coding: Coding::taken_by(request),
            secret: known.or(fresh),
            new_visit: new_visit.map(|secret| cookie::secret(cookie::VISIT, secret, None)),
        }
    }

    /// A visit of which nothing is asked of the database: for pages that tell of a refusal.
    pub fn unknown(request: &HttpRequest) -> Self {
        Self::new(request, None)
    }

    /// Whoever has signed in.
    ///
    /// # Errors
    /// 401, which a browser is answered with the way to sign in.
    pub fn actor(&self) -> Result<Actor, Problem> {
        self.viewer
            .ok_or_else(|| Problem::from(Refusal::SignInNeeded))
    }

    /// The frame of one answer, with a token of its own.
    pub fn frame(&self) -> Frame {
        let token = self.secret.as_deref().and_then(csrf::token);
        Frame {
            signed_in: self.viewer.is_some(),
            token: token.unwrap_or_default(),
            path: self.path.clone(),
            style: assets::STYLE.address(),
            script: assets::SCRIPT.address(),
            icon: assets::ICON.address(),
            coding: self.coding,
            new_visit: self.new_visit.clone(),
        }
    }
}

/// The language that was chosen, else the first one that the browser asks for and we have.
fn language(request: &HttpRequest) -> &'static Texts {
    let chosen = cookie::sent(request, cookie::LANGUAGE);
    let header = request.headers().get(ACCEPT_LANGUAGE);
    let asked = header.and_then(|value| value.to_str().ok()).unwrap_or("");
    let wished = chosen.as_deref().unwrap_or(asked).split(',');
    for tag in wished {
        match tag.trim().get(..2) {
            Some("en") => return &ENGLISH,
            Some("de") => return &GERMAN,
            _ => {}
        }
    }
    &ENGLISH
}
