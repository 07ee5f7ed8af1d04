//! The JSON document of a problem, and its place in the OpenAPI document.

use serde::Serialize;
use serde_json::{Map, Value};
use utoipa::ToSchema;
use utoipa::openapi::schema::{ObjectBuilder, Schema, SchemaType, Type};

/// A problem (RFC 9457). Further members depend on the type.
#[derive(Debug, Serialize, ToSchema)]
pub struct ProblemDocument {
    /// Address of a page that explains the type.
    #[serde(rename = "type")]
    #[schema(example = "/problems/points-cap-exceeded")]
    pub type_: String,
    /// The same for every problem of the type.
    #[schema(example = "The list costs more than the cap")]
    pub title: String,
    /// The HTTP status.
    #[schema(example = 422)]
    pub status: u16,
    /// About this very case.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "The list costs 612 points; the cap is 600.")]
    pub detail: Option<String>,
    /// The path that was asked for.
    pub instance: String,
    /// Name it when you ask for help.
    pub request_id: String,
    /// Every fault, where there are several or they have a place.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub errors: Vec<FaultDocument>,
    /// Values that belong to the case.
    #[serde(flatten)]
    #[schema(additional_properties)]
    pub extensions: Map<String, Value>,
}

/// One fault within a problem.
#[derive(Debug, Serialize, ToSchema)]
pub struct FaultDocument {
    /// Stable code.
    #[schema(example = "list.over-cap")]
    pub code: String,
    /// JSON Pointer into the request body (RFC 6901).
    #[schema(example = "/entries/2")]
    pub pointer: String,
    /// A sentence.
    pub detail: String,
    /// What is allowed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(schema_with = plain_value, required = false)]
    pub limit: Option<Value>,
    /// What was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(schema_with = plain_value, required = false)]
    pub actual: Option<Value>,
    /// Of a table: the line of the file, from 1; the first names the columns.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 7)]
    pub row: Option<u64>,
    /// Of a table: the column, from 1; 0 when the whole row is meant.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 4)]
    pub column: Option<usize>,
}

/// A number where something is counted, else a text.
fn plain_value() -> Schema {
    let types = SchemaType::Array(vec![Type::Number, Type::String]);
    ObjectBuilder::new().schema_type(types).into()
}

/// The problems that any operation may answer with.
#[derive(utoipa::IntoResponses)]
#[allow(dead_code, reason = "only the OpenAPI document is made from it")]
pub enum ProblemResponses {
    /// The request cannot be read.
    #[response(status = 400, content_type = "application/problem+json")]
    Malformed(ProblemDocument),
    /// Nobody is signed in, or the token is not valid.
    #[response(status = 401, content_type = "application/problem+json")]
    SignInNeeded(ProblemDocument),
    /// The role does not allow it.
    #[response(status = 403, content_type = "application/problem+json")]
    Forbidden(ProblemDocument),
    /// Absent, or not to be known by you.
    #[response(status = 404, content_type = "application/problem+json")]
    NotFound(ProblemDocument),
    /// Not at this point, or somebody was first.
    #[response(status = 409, content_type = "application/problem+json")]
    Conflict(ProblemDocument),
    /// The content breaks a rule; every fault is named.
    #[response(status = 422, content_type = "application/problem+json")]
    Unprocessable(ProblemDocument),
    /// Too many requests.
    #[response(status = 429, content_type = "application/problem+json")]
    TooMany(ProblemDocument),
    /// Any other problem.
    #[response(status = "default", content_type = "application/problem+json")]
    Other(ProblemDocument),
}
