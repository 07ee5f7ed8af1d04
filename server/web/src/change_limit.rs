//! Rate limit on requests that change something, by client address. Reading is not limited: what everybody reads
//! comes from a cache.

use std::net::{IpAddr, Ipv4Addr};
use std::num::NonZeroU32;
use std::sync::Arc;

use actix_web::Error;
use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::middleware::Next;
use actix_web::web::Data;
use governor::clock::{Clock, DefaultClock};
use governor::{DefaultKeyedRateLimiter, Quota, RateLimiter};

use crate::problem::{HttpFault, Problem};

/// So many times the sustained rate may come at once: a club behind one address, or an organiser who
/// works through a list.
const BURST: u32 = 10;

/// The limit on requests that change something, shared by the threads of a process.
#[derive(Clone)]
pub struct ChangeLimit {
    clients: Arc<DefaultKeyedRateLimiter<IpAddr>>,
    behind_proxy: bool,
}

impl ChangeLimit {
    /// So many changes a second from one address, and ten times as many at once. `behind_proxy`: the
    /// address is the last of `X-Forwarded-For`, which a proxy of ours has written.
    pub fn new(changes_per_second: NonZeroU32, behind_proxy: bool) -> Self {
        let at_once = changes_per_second.saturating_mul(NonZeroU32::MIN.saturating_add(BURST - 1));
        let quota = Quota::per_second(changes_per_second).allow_burst(at_once);
        Self {
            clients: Arc::new(RateLimiter::keyed(quota)),
            behind_proxy,
        }
    }

    fn client_address(&self, request: &ServiceRequest) -> IpAddr {
        let forwarded = || {
            let header = request.headers().get("x-forwarded-for")?.to_str().ok()?;
            header.rsplit(',').next()?.trim().parse().ok()
        };
        let forwarded = if self.behind_proxy { forwarded() } else { None };
        forwarded
            .or_else(|| request.peer_addr().map(|peer| peer.ip()))
            .unwrap_or(IpAddr::V4(Ipv4Addr::UNSPECIFIED))
    }
}

/// Middleware: 429 with `Retry-After` for a client that exceeds the limit.
///
/// # Errors
/// None of its own.
pub async fn limit_changes(
    request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    if let (false, Some(limit)) = (
        request.method().is_safe(),
        request.app_data::<Data<ChangeLimit>>(),
    ) && let Err(exceeded) = limit.clients.check_key(&limit.client_address(&request))
    {
        let wait = exceeded
            .wait_time_from(DefaultClock::default().now())
            .as_secs()
            + 1;
        return Ok(
            request.error_response(Problem::http(HttpFault::TooManyRequests).retry_after(wait))
        );
    }
    Ok(next.call(request).await?.map_into_boxed_body())
}
