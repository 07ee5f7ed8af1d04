//! Default descriptions of responses: OpenAPI requires one for every response (specification 3.1.0, Response
//! Object).

use utoipa::openapi::RefOr;
use utoipa::openapi::path::Operation;

/// Describes every response that has no description.
pub(super) fn describe(operation: &mut Operation) {
    for (status, answer) in &mut operation.responses.responses {
        if let RefOr::T(answer) = answer
            && answer.description.is_empty()
        {
            let words = match status.as_str() {
                "201" => "Made; `Location` says where.",
                _ => "The answer.",
            };
            words.clone_into(&mut answer.description);
        }
    }
}
