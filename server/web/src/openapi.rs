//! The OpenAPI document: completes every operation with its problems and with examples, and serves the document.

mod descriptions;
pub mod document;
mod examples;
mod problems;

use utoipa::openapi::OpenApi;
use utoipa::openapi::path::{Operation, PathItem};

/// Adds to the document what every operation has in common.
pub fn complete(mut document: OpenApi) -> OpenApi {
    let schemas = document
        .components
        .as_ref()
        .and_then(|components| serde_json::to_value(&components.schemas).ok())
        .unwrap_or_default();
    for operation in document.paths.paths.values_mut().flat_map(operations) {
        descriptions::describe(operation);
        problems::add(operation);
        examples::add(operation, &schemas);
    }
    document
}

fn operations(item: &mut PathItem) -> impl Iterator<Item = &mut Operation> {
    [
        &mut item.get,
        &mut item.put,
        &mut item.post,
        &mut item.patch,
        &mut item.delete,
    ]
    .into_iter()
    .flatten()
}
