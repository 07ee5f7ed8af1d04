//! Problems that follow from what an operation takes: a body, or a version.

use utoipa::openapi::path::{Operation, Parameter, ParameterIn};
use utoipa::openapi::{RefOr, Response};

const WITH_BODY: [(&str, &str); 2] = [
    (
        "413",
        "The body is larger than it may be; `limit` says how many bytes.",
    ),
    ("415", "The body is of another type."),
];
const WITH_VERSION: [(&str, &str); 2] = [
    (
        "412",
        "It was changed since the version that `If-Match` names.",
    ),
    ("428", "`If-Match` is needed."),
];

/// Adds them to the responses of an operation.
pub(super) fn add(operation: &mut Operation) {
    let Some(RefOr::T(problem)) = operation.responses.responses.get("default").cloned() else {
        return;
    };
    let mut add = |refusals: &[(&str, &str)]| {
        for &(status, description) in refusals {
            let mut response: Response = problem.clone();
            description.clone_into(&mut response.description);
            let responses = &mut operation.responses.responses;
            responses.insert(status.to_owned(), RefOr::T(response));
        }
    };
    if operation.request_body.is_some() {
        add(&WITH_BODY);
    }
    let parameters = operation.parameters.iter().flatten();
    if parameters.into_iter().any(names_a_version) {
        add(&WITH_VERSION);
    }
}

fn names_a_version(parameter: &RefOr<Parameter>) -> bool {
    matches!(parameter, RefOr::T(parameter)
        if parameter.name == "If-Match" && parameter.parameter_in == ParameterIn::Header)
}
