//! Serves the OpenAPI document, and Swagger UI to browse it. Its assets are part of the binary.

use actix_web::http::header::{CONTENT_SECURITY_POLICY, CONTENT_TYPE};
use actix_web::middleware::DefaultHeaders;
use actix_web::web::{Bytes, Data, ServiceConfig, scope};
use actix_web::{HttpResponse, get};
use utoipa::openapi::OpenApi;
use utoipa_swagger_ui::{Config, SwaggerUi};

const PATH: &str = "/api/openapi.json";

/// The browsing page sets styles from its script; nothing else here may.
const CSP: &str = "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; \
     img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none'; \
     frame-ancestors 'none'";

/// The OpenAPI document as JSON text.
#[derive(Clone, Debug)]
pub struct OpenApiDocument(Bytes);

impl OpenApiDocument {
    /// # Errors
    /// A document that cannot be serialized.
    pub fn new(document: &OpenApi) -> Result<Self, serde_json::Error> {
        Ok(Self(serde_json::to_vec(document)?.into()))
    }
}

/// The document as JSON.
#[get("/api/openapi.json")]
pub async fn find_document(document: Data<OpenApiDocument>) -> HttpResponse {
    HttpResponse::Ok()
        .insert_header((CONTENT_TYPE, "application/json"))
        .body(document.0.clone())
}

/// Adds the document, and Swagger UI below `/api/docs/`.
pub fn serve(config: &mut ServiceConfig, document: OpenApiDocument) {
    let page = SwaggerUi::new("/{_:.*}").config(Config::new([PATH]));
    let headers = DefaultHeaders::new().add((CONTENT_SECURITY_POLICY, CSP));
    config.app_data(Data::new(document)).service(find_document);
    config.service(scope("/api/docs").wrap(headers).service(page));
}
