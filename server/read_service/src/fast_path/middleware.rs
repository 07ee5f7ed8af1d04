//! Memo middleware in front of the application: a request that was routed before is answered from the page
//! cache without routing.
//!
//! A response of the read service follows from method, target and the headers that `Vary` names, and from
//! nothing else. Each worker thread memoizes what a request resolved to; the next request of the same bytes is
//! spared routing, extractors and middleware. Only the resolution is memoized: the page is looked up each time.

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

use crate::fast_path::resolved_request::ResolvedRequest;

/// Targets that a thread memoizes; one more clears them all.
const MAX_TARGETS: usize = 10_000;

/// Combinations of headers for one target. Browsers of one make send the same ones.
const MAX_KEYS_PER_TARGET: usize = 8;

/// Called after each response of the fast path with the instant at which its request came.
pub type HitObserver = Box<dyn Fn(Instant)>;

/// Makes the observer of the responses of a route with a status.
pub type ObserverFactory = Arc<dyn Fn(&str, StatusCode) -> HitObserver + Send + Sync>;

/// An application behind the fast path.
pub struct FastPath<A> {
    app: A,
    observe: ObserverFactory,
}

impl<A: ServiceFactory<Request>> FastPath<A> {
    /// Puts the fast path before `app`.
    pub fn new(app: impl IntoServiceFactory<A, Request>, observe: ObserverFactory) -> Self {
        let app = app.into_factory();
        Self { app, observe }
    }
}

impl<A, B> ServiceFactory<Request> for FastPath<A>
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
    type Service = WorkerFastPath<A::Service>;
    type InitError = A::InitError;
    type Future = LocalBoxFuture<'static, Result<Self::Service, Self::InitError>>;

    fn new_service(&self, config: AppConfig) -> Self::Future {
        let observe = Arc::clone(&self.observe);
        let with_fast_path = move |app| WorkerFastPath {
            app,
            observe,
            requests: Rc::default(),
        };
        Box::pin(self.app.new_service(config).map_ok(with_fast_path))
    }
}

/// The fast path of one worker thread, which needs no lock.
pub struct WorkerFastPath<S> {
    app: S,
    observe: ObserverFactory,
    requests: Rc<RefCell<RequestCache>>,
}

type FastPathResult<B, E> = Result<Response<EitherBody<B, Bytes>>, E>;

impl<S, B> Service<Request> for WorkerFastPath<S>
where
    S: Service<Request, Response = ServiceResponse<B>>,
    S::Future: 'static,
    S::Error: 'static,
    B: MessageBody + 'static,
{
    type Response = Response<EitherBody<B, Bytes>>;
    type Error = S::Error;
    type Future = Either<
        Ready<FastPathResult<B, S::Error>>,
        LocalBoxFuture<'static, FastPathResult<B, S::Error>>,
    >;

    forward_ready!(app);

    fn call(&self, request: Request) -> Self::Future {
        let received_at = Instant::now();
        let head = request.head();
        if let Some((observer, response)) = self.requests.borrow().respond(head) {
            observer(received_at);
            return Either::Left(ready(Ok(
                response.map_body(|_, body| EitherBody::right(body))
            )));
        }
        let key = RequestKey::from_head(head);
        let (requests, observe) = (Rc::clone(&self.requests), Arc::clone(&self.observe));
        let routed = self.app.call(request).map_ok(move |response| {
            let resolved = response.response().extensions().get().cloned();
            if let (Some(key), Some(resolved)) = (key, resolved) {
                requests.borrow_mut().insert(key, resolved, &observe);
            }
            Response::from(response).map_body(|_, body| EitherBody::left(body))
        });
        Either::Right(Box::pin(routed))
    }
}

/// By target, what each combination of headers resolved to.
#[derive(Default)]
struct RequestCache(HashMap<String, Vec<CachedRequest>>);

/// A memoized request, with the observers of its two statuses.
struct CachedRequest {
    key: RequestKey,
    resolved: ResolvedRequest,
    on_ok: HitObserver,
    on_not_modified: HitObserver,
}

/// All of a request that decides what it resolves to.
#[derive(PartialEq)]
struct RequestKey {
    target: String,
    accept: Vec<u8>,
    accept_encoding: Vec<u8>,
}

impl RequestCache {
    fn respond(&self, head: &RequestHead) -> Option<(&HitObserver, Response<Bytes>)> {
        if head.method != Method::GET {
            return None;
        }
        let requests = self.0.get(head.uri.path_and_query()?.as_str())?;
        let accept = single_value(&head.headers, &ACCEPT)?;
        let accept_encoding = single_value(&head.headers, &ACCEPT_ENCODING)?;
        let same = |it: &&CachedRequest| {
            it.key.accept == accept && it.key.accept_encoding == accept_encoding
        };
        let request = requests.iter().find(same)?;
        let response = request.resolved.respond(&head.headers)?;
        let observer = if response.status() == StatusCode::NOT_MODIFIED {
            &request.on_not_modified
        } else {
            &request.on_ok
        };
        Some((observer, response))
    }

    fn insert(&mut self, key: RequestKey, resolved: ResolvedRequest, observe: &ObserverFactory) {
        if self.0.len() >= MAX_TARGETS {
            self.0.clear();
        }
        let requests = self.0.entry(key.target.clone()).or_default();
        // An older one is of an entry that was evicted meanwhile.
        requests.retain(|old| old.key != key);
        if requests.len() >= MAX_KEYS_PER_TARGET {
            requests.clear();
        }
        requests.push(CachedRequest {
            on_ok: observe(&resolved.route, StatusCode::OK),
            on_not_modified: observe(&resolved.route, StatusCode::NOT_MODIFIED),
            resolved,
            key,
        });
    }
}

impl RequestKey {
    fn from_head(head: &RequestHead) -> Option<Self> {
        if head.method != Method::GET {
            return None;
        }
        Some(Self {
            target: head.uri.path_and_query()?.as_str().to_owned(),
            accept: single_value(&head.headers, &ACCEPT)?.to_owned(),
            accept_encoding: single_value(&head.headers, &ACCEPT_ENCODING)?.to_owned(),
        })
    }
}

/// A header's value, empty without the header; `None` where it stands on several lines.
fn single_value<'a>(headers: &'a HeaderMap, name: &HeaderName) -> Option<&'a [u8]> {
    let mut lines = headers.get_all(name);
    let value = lines.next().map_or(&[][..], |line| line.as_bytes());
    lines.next().is_none().then_some(value)
}
