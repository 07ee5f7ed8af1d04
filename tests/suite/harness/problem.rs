//! A problem document (RFC 9457).

use std::fmt::{self, Display, Formatter};

use serde::Deserialize;
use serde_json::Value;

/// A refusal: a problem document (RFC 9457) with its faults.
#[derive(Debug)]
pub struct Problem {
    pub status: u16,
    pub detail: String,
    pub faults: Vec<Fault>,
    kind: String,
    /// The document as it came, for members that only one kind of problem has.
    document: Value,
}

/// What is wrong with one part of a request.
#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Fault {
    pub code: String,
    /// A JSON pointer into the body.
    pub pointer: String,
    pub detail: String,
    /// A number or a day; `null` where the fault has none.
    #[serde(default)]
    pub limit: Value,
    #[serde(default)]
    pub actual: Value,
    /// Of a table's cell.
    pub row: Option<u64>,
    pub column: Option<u64>,
}

/// What one fault must say: code, pointer, limit, actual.
pub type Said<'a> = (&'a str, &'a str, Value, Value);

/// The members of every problem that stories look at.
#[derive(Deserialize)]
struct Document {
    #[serde(rename = "type")]
    kind: String,
    status: u16,
    #[serde(default)]
    detail: String,
    #[serde(default)]
    errors: Vec<Fault>,
}

impl Problem {
    pub(super) fn read(document: Value) -> Self {
        let known = Document::deserialize(&document);
        let known = known.unwrap_or_else(|fault| panic!("{fault} in {document}"));
        Self {
            status: known.status,
            detail: known.detail,
            faults: known.errors,
            kind: known.kind,
            document,
        }
    }

    /// The last part of its type's address.
    #[track_caller]
    pub fn code(&self) -> &str {
        self.kind.strip_prefix("/problems/").unwrap()
    }

    /// A member that not every problem has; `null` where it is missing.
    pub fn member(&self, name: &str) -> &Value {
        self.document.get(name).unwrap_or(&Value::Null)
    }

    pub fn limit(&self) -> &Value {
        self.member("limit")
    }

    pub fn actual(&self) -> &Value {
        self.member("actual")
    }

    /// The one fault that there is.
    #[track_caller]
    pub fn fault(&self) -> &Fault {
        let [fault] = &self.faults[..] else {
            panic!("not one fault: {self}");
        };
        fault
    }

    pub fn pointers(&self) -> Vec<&str> {
        let faults = self.faults.iter();
        faults.map(|fault| fault.pointer.as_str()).collect()
    }

    pub fn said(&self) -> Vec<Said<'_>> {
        self.faults.iter().map(Fault::said).collect()
    }

    /// All but the id of the request, which differs each time.
    pub fn without_id(mut self) -> Value {
        let members = self.document.as_object_mut().unwrap();
        members.remove("request_id").unwrap();
        self.document
    }
}

impl Fault {
    pub fn said(&self) -> Said<'_> {
        let (limit, actual) = (self.limit.clone(), self.actual.clone());
        (&self.code, &self.pointer, limit, actual)
    }
}

impl Display for Problem {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        self.document.fmt(f)
    }
}
