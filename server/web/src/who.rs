//! Who asks: from the `Authorization` header to an actor.

use std::future::{Future, ready};
use std::pin::Pin;

use actix_web::dev::Payload;
use actix_web::http::header::AUTHORIZATION;
use actix_web::{FromRequest, HttpRequest, web};
use app::{Actor, Desk, Refusal};

use crate::problem::Problem;

/// Somebody who must have signed in.
pub struct SignedIn(pub Actor);

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

fn identify(request: &HttpRequest) -> Coming<Option<Actor>> {
    let Some(desk) = request.app_data::<web::Data<Desk>>().cloned() else {
        return Box::pin(ready(Err(Refusal::Broken("no desk".to_owned()).into())));
    };
    let header = request.headers().get(AUTHORIZATION).cloned();
    Box::pin(async move {
        let Some(header) = header else {
            return Ok(None);
        };
        let token = header
            .to_str()
            .ok()
            .and_then(|text| text.split_once(' '))
            .filter(|(scheme, _)| scheme.eq_ignore_ascii_case("bearer"))
            .map(|(_, token)| token.trim().to_owned())
            .unwrap_or_default();
        Ok(Some(app::accounts::authenticate(&desk, &token).await?))
    })
}
