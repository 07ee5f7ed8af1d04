//! The `Allow` header: which methods a path takes, looked up only for a 405.

use std::collections::HashMap;
use std::sync::LazyLock;

use actix_web::HttpRequest;

use crate::problem::{HttpFault, Problem};
use crate::routes;

/// By the pattern of an address, as a value of the `Allow` header (RFC 9110, section 10.2.1).
static ALLOWED: LazyLock<HashMap<String, String>> = LazyLock::new(|| {
    let paths = routes::api_document().paths.paths;
    let named = paths.into_iter().map(|(pattern, item)| {
        let methods = [
            ("GET", item.get.is_some()),
            ("PUT", item.put.is_some()),
            ("POST", item.post.is_some()),
            ("PATCH", item.patch.is_some()),
            ("DELETE", item.delete.is_some()),
        ];
        let taken = methods.into_iter().filter(|(_, taken)| *taken);
        let names: Vec<&str> = taken.map(|(name, _)| name).collect();
        (pattern, names.join(", "))
    });
    named.collect()
});

/// The default handler: 405 where the path takes another method, 404 elsewhere. What is no operation is a page,
/// and those take GET.
///
/// # Errors
/// Always one of the two.
pub async fn unmatched_route(request: HttpRequest) -> Result<&'static str, Problem> {
    let Some(pattern) = request.resource_map().match_pattern(request.path()) else {
        return Err(Problem::http(HttpFault::NotFound));
    };
    let allowed = ALLOWED.get(&pattern).map_or("GET", String::as_str);
    Err(Problem::not_allowed(allowed))
}
