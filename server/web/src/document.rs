//! The OpenAPI document, and the page to browse it. The page's assets are part of the binary.

use std::sync::LazyLock;

use actix_web::http::header::{CONTENT_SECURITY_POLICY, CONTENT_TYPE};
use actix_web::middleware::DefaultHeaders;
use actix_web::web::{Bytes, ServiceConfig, scope};
use actix_web::{HttpResponse, get};
use utoipa_swagger_ui::{Config, SwaggerUi};

use crate::routes::openapi;

const ADDRESS: &str = "/api/openapi.json";

/// The browsing page sets styles from its script; nothing else here may.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; \
     img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none'; \
     frame-ancestors 'none'";

static DOCUMENT: LazyLock<Bytes> =
    LazyLock::new(|| serde_json::to_vec(&openapi()).unwrap_or_default().into());

/// The document as JSON.
#[get("/api/openapi.json")]
pub async fn find_document() -> HttpResponse {
    HttpResponse::Ok()
        .insert_header((CONTENT_TYPE, "application/json"))
        .body(DOCUMENT.clone())
}

/// The page, below `/api/docs/`.
pub fn browse(config: &mut ServiceConfig) {
    let page = SwaggerUi::new("/{_:.*}").config(Config::new([ADDRESS]));
    let headers = DefaultHeaders::new().add((CONTENT_SECURITY_POLICY, POLICY));
    config.service(scope("/api/docs").wrap(headers).service(page));
}
