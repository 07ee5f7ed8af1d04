//! What the OpenAPI document says of every operation alike: which refusals it may meet, and an example
//! of what goes in and comes out.

mod answers;
mod examples;
mod refusals;

use utoipa::openapi::OpenApi;
use utoipa::openapi::path::{Operation, PathItem};

/// The document with what every operation has in common.
pub fn complete(mut document: OpenApi) -> OpenApi {
    let schemas = document
        .components
        .as_ref()
        .and_then(|components| serde_json::to_value(&components.schemas).ok())
        .unwrap_or_default();
    for operation in document.paths.paths.values_mut().flat_map(operations) {
        answers::describe(operation);
        refusals::list(operation);
        examples::give(operation, &schemas);
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
