//! Who asks: from the `Authorization` header to an actor.

use std::future::{Future, Ready, ready};
use std::pin::Pin;

use actix_web::dev::Payload;
use actix_web::http::header::AUTHORIZATION;
use actix_web::{FromRequest, HttpRequest, web};
use app::accounts::Claimant;
use app::{Actor, Desk, Refusal};

use crate::problem::Problem;

/// Somebody who must have signed in.
pub struct SignedIn(pub Actor);

/// Somebody who shows a genuine token: whether their session is alive is for the use case to find out.
pub struct Claiming(pub Claimant);

/// Somebody who may have signed in. A bad token is refused all the same.
pub struct Caller(pub Option<Actor>);

type Coming<T> = Pin<Box<dyn Future<Output = Result<T, Problem>>>>;

impl FromRequest for SignedIn {
    type Error = Problem;
    type Future = Coming<Self>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let caller = identify(request);
        Box::pin(async move {
            caller
                .await?
                .map(Self)
                .ok_or_else(|| Problem::from(Refusal::SignInNeeded))
        })
    }
}

impl FromRequest for Caller {
    type Error = Problem;
    type Future = Coming<Self>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let caller = identify(request);
        Box::pin(async move { Ok(Self(caller.await?)) })
    }
}

impl FromRequest for Claiming {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let claimant = desk(request).and_then(|desk| {
            let token = token(request).ok_or(Refusal::SignInNeeded)?;
            Claimant::read(&desk, token)
        });
        ready(claimant.map(Self).map_err(Problem::from))
    }
}

fn identify(request: &HttpRequest) -> Coming<Option<Actor>> {
    let desk = desk(request);
    let token = token(request).map(str::to_owned);
    Box::pin(async move {
        let desk = desk?;
        Ok(match token {
            None => None,
            Some(token) => Some(app::accounts::authenticate(&desk, &token).await?),
        })
    })
}

fn desk(request: &HttpRequest) -> Result<web::Data<Desk>, Refusal> {
    let desk = request.app_data::<web::Data<Desk>>().cloned();
    desk.ok_or_else(|| Refusal::Broken("no desk".to_owned()))
}

/// What the header holds, empty where that is no token; nothing without a header.
fn token(request: &HttpRequest) -> Option<&str> {
    let header = request.headers().get(AUTHORIZATION)?.to_str();
    let words = header.ok().and_then(|text| text.split_once(' '));
    let bearer = words.filter(|(scheme, _)| scheme.eq_ignore_ascii_case("bearer"));
    Some(bearer.map(|(_, token)| token.trim()).unwrap_or_default())
}
