//! The front of the shelf: what was asked for a moment ago is answered before any routing.
//!
//! An answer of the read service follows from method, target and the headers that `Vary` names, and
//! from nothing else. A thread remembers what it found them to ask for; the next request of the same
//! bytes is spared the routes, the reading of its parts and everything that surrounds a route. What is
//! served is looked up anew each time.

use std::cell::RefCell;
use std::collections::HashMap;
use std::future::{Ready, ready};
use std::rc::Rc;
use std::sync::Arc;
use std::time::Instant;

use actix_http::Request;
use actix_service::IntoServiceFactory;
use actix_web::body::{EitherBody, MessageBody};
use actix_web::dev::{
    AppConfig, RequestHead, Response, Service, ServiceFactory, ServiceResponse, forward_ready,
};
use actix_web::http::header::{ACCEPT, ACCEPT_ENCODING, HeaderMap, HeaderName};
use actix_web::http::{Method, StatusCode};
use actix_web::web::Bytes;
use futures_util::TryFutureExt;
use futures_util::future::{Either, LocalBoxFuture};

use crate::asked::Asked;

/// Targets that a thread remembers at most; then it forgets all.
const MOST_TARGETS: usize = 10_000;

/// Ways to ask for one target at most. Browsers of one make send the same headers.
const MOST_WAYS: usize = 8;

/// Told of each answer that is given at the front, and when it was asked for.
pub type Told = Box<dyn Fn(Instant)>;

/// Finds who is told of the answers of a route with a status.
pub type Tell = Arc<dyn Fn(&str, StatusCode) -> Told + Send + Sync>;

/// An application with a front before it.
pub struct Front<A> {
    app: A,
    tell: Tell,
}

impl<A: ServiceFactory<Request>> Front<A> {
    /// Puts a front before `app`.
    pub fn new(app: impl IntoServiceFactory<A, Request>, tell: Tell) -> Self {
        let app = app.into_factory();
        Self { app, tell }
    }
}

impl<A, B> ServiceFactory<Request> for Front<A>
where
    A: ServiceFactory<Request, Config = AppConfig, Response = ServiceResponse<B>>,
    A::Service: 'static,
    A::Future: 'static,
    A::Error: 'static,
    A::InitError: 'static,
    B: MessageBody + 'static,
{
    type Response = Response<EitherBody<B, Bytes>>;
    type Error = A::Error;
    type Config = AppConfig;
    type Service = FrontOfThread<A::Service>;
    type InitError = A::InitError;
    type Future = LocalBoxFuture<'static, Result<Self::Service, Self::InitError>>;

    fn new_service(&self, config: AppConfig) -> Self::Future {
        let tell = Arc::clone(&self.tell);
        let with_front = move |app| FrontOfThread {
            app,
            tell,
            memory: Rc::default(),
        };
        Box::pin(self.app.new_service(config).map_ok(with_front))
    }
}

/// The front of one thread.
pub struct FrontOfThread<S> {
    app: S,
    tell: Tell,
    memory: Rc<RefCell<Memory>>,
}

type Answer<B, E> = Result<Response<EitherBody<B, Bytes>>, E>;

impl<S, B> Service<Request> for FrontOfThread<S>
where
    S: Service<Request, Response = ServiceResponse<B>>,
    S::Future: 'static,
    S::Error: 'static,
    B: MessageBody + 'static,
{
    type Response = Response<EitherBody<B, Bytes>>;
    type Error = S::Error;
    type Future = Either<Ready<Answer<B, S::Error>>, LocalBoxFuture<'static, Answer<B, S::Error>>>;

    forward_ready!(app);

    fn call(&self, request: Request) -> Self::Future {
        let asked = Instant::now();
        let head = request.head();
        if let Some((told, answer)) = self.memory.borrow().answer(head) {
            told(asked);
            return Either::Left(ready(
                Ok(answer.map_body(|_, body| EitherBody::right(body))),
            ));
        }
        let way = Way::of(head);
        let (memory, tell) = (Rc::clone(&self.memory), Arc::clone(&self.tell));
        let answered = self.app.call(request).map_ok(move |response| {
            if let (Some(way), Some(asked)) = (way, response.response().extensions().get::<Asked>())
            {
                memory.borrow_mut().remember(way, asked, &tell);
            }
            Response::from(response).map_body(|_, body| EitherBody::left(body))
        });
        Either::Right(Box::pin(answered))
    }
}

/// By target, what each way to ask for it turned out to mean.
#[derive(Default)]
struct Memory(HashMap<String, Vec<Remembered>>);

/// What was asked for, and who is told of it.
struct Remembered {
    way: Way,
    asked: Asked,
    whole: Told,
    unchanged: Told,
}

/// All that decides what a request for something to read asks for.
#[derive(PartialEq)]
struct Way {
    target: String,
    accept: Vec<u8>,
    codings: Vec<u8>,
}

impl Memory {
    fn answer(&self, head: &RequestHead) -> Option<(&Told, Response<Bytes>)> {
        if head.method != Method::GET {
            return None;
        }
        let ways = self.0.get(head.uri.path_and_query()?.as_str())?;
        let accept = value(&head.headers, &ACCEPT)?;
        let codings = value(&head.headers, &ACCEPT_ENCODING)?;
        let same = |it: &&Remembered| it.way.accept == accept && it.way.codings == codings;
        let remembered = ways.iter().find(same)?;
        let answer = remembered.asked.answer(&head.headers)?;
        let told = if answer.status() == StatusCode::NOT_MODIFIED {
            &remembered.unchanged
        } else {
            &remembered.whole
        };
        Some((told, answer))
    }

    fn remember(&mut self, way: Way, asked: &Asked, tell: &Tell) {
        if self.0.len() >= MOST_TARGETS {
            self.0.clear();
        }
        let ways = self.0.entry(way.target.clone()).or_default();
        // One whose season was forgotten meanwhile makes room for its successor.
        ways.retain(|old| old.way != way);
        if ways.len() >= MOST_WAYS {
            ways.clear();
        }
        ways.push(Remembered {
            asked: asked.clone(),
            whole: tell(&asked.route, StatusCode::OK),
            unchanged: tell(&asked.route, StatusCode::NOT_MODIFIED),
            way,
        });
    }
}

impl Way {
    fn of(head: &RequestHead) -> Option<Self> {
        if head.method != Method::GET {
            return None;
        }
        Some(Self {
            target: head.uri.path_and_query()?.as_str().to_owned(),
            accept: value(&head.headers, &ACCEPT)?.to_owned(),
            codings: value(&head.headers, &ACCEPT_ENCODING)?.to_owned(),
        })
    }
}

/// A header's one value, empty where there is none; nothing where there are several lines of it.
fn value<'a>(headers: &'a HeaderMap, name: &HeaderName) -> Option<&'a [u8]> {
    let mut lines = headers.get_all(name);
    let value = lines.next().map_or(&[][..], |line| line.as_bytes());
    lines.next().is_none().then_some(value)
}
