//! Authentication of API requests: extractors from the bearer token (RFC 6750) to an actor.

use std::future::{Future, Ready, ready};
use std::pin::Pin;

use actix_web::dev::Payload;
use actix_web::http::header::AUTHORIZATION;
use actix_web::{FromRequest, HttpRequest, web};
use app::accounts::UnverifiedSession;
use app::{Actor, App, Refusal};

use crate::problem::Problem;

/// Extractor: somebody who must have signed in.
pub struct SignedIn(pub Actor);

/// Extractor: a token with a valid signature. The use case checks that its session is alive, in its own query.
pub struct BearerSession(pub UnverifiedSession);

/// Extractor: somebody who may have signed in. A bad token is refused all the same.
pub struct MaybeSignedIn(pub Option<Actor>);

type ExtractFuture<T> = Pin<Box<dyn Future<Output = Result<T, Problem>>>>;

impl FromRequest for SignedIn {
    type Error = Problem;
    type Future = ExtractFuture<Self>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let caller = authenticate(request);
        Box::pin(async move {
            caller
                .await?
                .map(Self)
                .ok_or_else(|| Problem::from(Refusal::SignInNeeded))
        })
    }
}

impl FromRequest for MaybeSignedIn {
    type Error = Problem;
    type Future = ExtractFuture<Self>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let caller = authenticate(request);
        Box::pin(async move { Ok(Self(caller.await?)) })
    }
}

impl FromRequest for BearerSession {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let unverified = find_app(request).and_then(|app| {
            let token = bearer_token(request).ok_or(Refusal::SignInNeeded)?;
            UnverifiedSession::from_token(&app, token)
        });
        ready(unverified.map(Self).map_err(Problem::from))
    }
}

fn authenticate(request: &HttpRequest) -> ExtractFuture<Option<Actor>> {
    let app = find_app(request);
    let token = bearer_token(request).map(str::to_owned);
    Box::pin(async move {
        let app = app?;
        Ok(match token {
            None => None,
            Some(token) => Some(app::accounts::authenticate(&app, &token).await?),
        })
    })
}

fn find_app(request: &HttpRequest) -> Result<web::Data<App>, Refusal> {
    let app = request.app_data::<web::Data<App>>().cloned();
    app.ok_or_else(|| Refusal::Internal("no app".to_owned()))
}

/// The token of the `Authorization` header, empty where it holds none; `None` without the header.
fn bearer_token(request: &HttpRequest) -> Option<&str> {
    let header = request.headers().get(AUTHORIZATION)?.to_str();
    let words = header.ok().and_then(|text| text.split_once(' '));
    let bearer = words.filter(|(scheme, _)| scheme.eq_ignore_ascii_case("bearer"));
    // Another scheme holds no token of ours: the empty one is refused like any that is unknown.
    Some(bearer.map_or("", |(_, token)| token.trim()))
}
