//! One request for a page: who reads it and in which language. And the layout of the response.

use std::fmt;
use std::future::Future;
use std::pin::Pin;

use actix_web::cookie::Cookie;
use actix_web::dev::Payload;
use actix_web::http::header::{ACCEPT_LANGUAGE, ContentEncoding};
use actix_web::{FromRequest, HttpRequest, web};
use app::{Actor, App, Refusal, Viewer};
use messages::Language;

use super::assets;
use super::compression;
use super::cookies;
use super::csrf;
use crate::problem::Problem;
use messages::Texts;

/// Extractor: one request for a page.
pub struct PageRequest {
    /// Who reads.
    pub viewer: Viewer,
    /// The texts of the reader's language.
    pub t: Texts,
    path: String,
    content_encoding: ContentEncoding,
    /// What the CSRF tokens of this browser are bound to.
    secret: Option<String>,
    new_visitor_cookie: Option<Cookie<'static>>,
}

/// What the base template shows around the content of every page.
pub struct Layout {
    /// Whether somebody is signed in.
    pub signed_in: bool,
    /// CSRF token for the forms of this page.
    pub token: String,
    /// Path and query of this page.
    pub path: String,
    /// Address of the stylesheet.
    pub style: &'static str,
    /// Address of the script.
    pub script: &'static str,
    /// Address of the icon.
    pub icon: &'static str,
    pub(super) content_encoding: ContentEncoding,
    pub(super) new_visitor_cookie: Option<Cookie<'static>>,
}

impl Layout {
    /// The hidden field with the CSRF token, for every form.
    pub fn csrf_field(&self) -> CsrfField<'_> {
        CsrfField(&self.token)
    }
}

/// A hidden field with a CSRF token.
pub struct CsrfField<'a>(&'a str);

impl fmt::Display for CsrfField<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (name, token) = (csrf::FIELD, self.0);
        write!(
            f,
            "<input type=\"hidden\" name=\"{name}\" value=\"{token}\">"
        )
    }
}

/// Needs no escaping: a token is made of hexadecimal digits and a full stop.
impl askama::filters::HtmlSafe for CsrfField<'_> {}

impl FromRequest for PageRequest {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let request = request.clone();
        Box::pin(async move {
            let app = request.app_data::<web::Data<App>>();
            let app = app.ok_or_else(|| Refusal::Internal("no app".to_owned()))?;
            let viewer = match cookies::value(&request, cookies::SESSION) {
                Some(secret) => app::accounts::authenticate_page(app, &secret).await?,
                None => None,
            };
            Ok(Self::new(&request, viewer))
        })
    }
}

impl PageRequest {
    fn new(request: &HttpRequest, viewer: Viewer) -> Self {
        let known = csrf::browser_secret(request);
        let fresh = if known.is_none() {
            csrf::new_secret()
        } else {
            None
        };
        let new_visitor = fresh.clone();
        Self {
            viewer,
            t: negotiate_language(request),
            path: request.uri().to_string(),
            content_encoding: compression::negotiate(request),
            secret: known.or(fresh),
            new_visitor_cookie: new_visitor
                .map(|secret| cookies::secret_cookie(cookies::VISIT, secret, None)),
        }
    }

    /// A request whose session is not looked up: for error pages, which must not need the database.
    pub fn anonymous(request: &HttpRequest) -> Self {
        Self::new(request, None)
    }

    /// Who is signed in.
    ///
    /// # Errors
    /// 401, which the error page turns into a redirect to the sign-in page.
    pub fn actor(&self) -> Result<Actor, Problem> {
        self.viewer
            .ok_or_else(|| Problem::from(Refusal::SignInNeeded))
    }

    /// The layout of one page, with a token of its own.
    pub fn layout(&self) -> Layout {
        let token = self.secret.as_deref().and_then(csrf::new_token);
        Layout {
            signed_in: self.viewer.is_some(),
            // Without randomness there is no token, and every form is refused.
            token: token.unwrap_or_default(),
            path: self.path.clone(),
            style: assets::STYLE.address(),
            script: assets::SCRIPT.address(),
            icon: assets::ICON.address(),
            content_encoding: self.content_encoding,
            new_visitor_cookie: self.new_visitor_cookie.clone(),
        }
    }
}

/// In the language of the cookie, else in the one of ours that `Accept-Language` likes best.
fn negotiate_language(request: &HttpRequest) -> Texts {
    let chosen = cookies::value(request, cookies::LANGUAGE);
    let chosen = chosen.and_then(|tag| Language::of_tag(&tag));
    let accepted = || {
        let header = request.headers().get(ACCEPT_LANGUAGE)?;
        Language::accepted(header.to_str().ok()?)
    };
    Texts::of(chosen.or_else(accepted).unwrap_or(Language::English))
}
