//! Example bodies, assembled from the examples of their fields.

use serde_json::{Map, Value, json};
use utoipa::openapi::path::Operation;
use utoipa::openapi::{Content, RefOr};

const SOME_ID: &str = "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64";
const SOME_INSTANT: &str = "2026-03-03T18:00:00Z";
const SOME_DAY: &str = "2026-03-03";

/// Gives the request and the main answer an example, where they have none of their own.
pub(super) fn add(operation: &mut Operation, schemas: &Value) {
    if let Some(RefOr::T(request)) = &mut operation.request_body {
        for content in request.content.values_mut() {
            fill(
                content,
                &Sampler {
                    schemas,
                    whole: false,
                },
            );
        }
    }
    let responses = operation.responses.responses.iter_mut();
    let successes = responses.filter(|(status, _)| status.starts_with('2'));
    for (_, response) in successes {
        if let RefOr::T(response) = response {
            for content in response.content.values_mut() {
                fill(
                    content,
                    &Sampler {
                        schemas,
                        whole: true,
                    },
                );
            }
        }
    }
}

fn fill(content: &mut RefOr<Content>, sampler: &Sampler<'_>) {
    if let RefOr::T(content) = content
        && content.example.is_none()
        && content.examples.is_empty()
    {
        let schema = serde_json::to_value(&content.schema).unwrap_or_default();
        content.example = sampler.sample(&schema, &mut Vec::new());
    }
}

/// Makes values of schemas.
struct Sampler<'a> {
    /// By name.
    schemas: &'a Value,
    /// With every field; else with those that must be there or have an example.
    whole: bool,
}

impl Sampler<'_> {
    /// A value of the schema; none of bytes, and none where a schema within itself begins anew.
    fn sample<'s>(&'s self, schema: &'s Value, within: &mut Vec<&'s str>) -> Option<Value> {
        if let Some(example) = schema
            .get("example")
            .or_else(|| schema.pointer("/examples/0"))
        {
            return Some(example.clone());
        }
        if let Some(name) = schema.get("$ref").and_then(Value::as_str) {
            let name = name.rsplit('/').next()?;
            if within.contains(&name) {
                return None;
            }
            within.push(name);
            let sample = self.sample(self.schemas.get(name)?, within);
            within.pop();
            return sample;
        }
        if let Some(first) = schema.pointer("/enum/0").or_else(|| schema.get("const")) {
            return Some(first.clone());
        }
        if let Some(parts) = schema.get("allOf").and_then(Value::as_array) {
            return Some(self.joined(parts, within));
        }
        match schema.get("oneOf").or_else(|| schema.get("anyOf")) {
            Some(choices) => choices
                .as_array()?
                .iter()
                .filter(|choice| type_of(choice) != Some("null"))
                .find_map(|choice| self.sample(choice, within)),
            None => self.plain(schema, within),
        }
    }

    fn joined<'s>(&'s self, parts: &'s [Value], within: &mut Vec<&'s str>) -> Value {
        let mut whole = Map::new();
        for part in parts {
            if let Some(Value::Object(members)) = self.sample(part, within) {
                whole.extend(members);
            }
        }
        Value::Object(whole)
    }

    fn plain<'s>(&'s self, schema: &'s Value, within: &mut Vec<&'s str>) -> Option<Value> {
        match type_of(schema)? {
            "object" => Some(self.object(schema, within)),
            "array" => Some(self.array(schema, within)),
            "string" => text(schema).map(Value::from),
            "integer" | "number" => {
                let min = schema.get("minimum").and_then(Value::as_i64);
                Some(min.unwrap_or(1).max(1).into())
            }
            "boolean" => Some(false.into()),
            _ => None,
        }
    }

    fn object<'s>(&'s self, schema: &'s Value, within: &mut Vec<&'s str>) -> Value {
        let needed = schema.get("required").and_then(Value::as_array);
        let is_needed =
            |name: &str| needed.is_some_and(|needed| needed.iter().any(|it| it == name));
        let members = schema.get("properties").and_then(Value::as_object);
        let wanted = members.into_iter().flatten().filter(|(name, member)| {
            self.whole || is_needed(name) || member.get("example").is_some()
        });
        let samples = wanted.filter_map(|(name, member)| {
            let sample = self.sample(member, within);
            // A schema within itself ends here: with nothing, where something must stand.
            let ended = || is_needed(name).then_some(Value::Null);
            Some((name.clone(), sample.or_else(ended)?))
        });
        Value::Object(samples.collect())
    }

    fn array<'s>(&'s self, schema: &'s Value, within: &mut Vec<&'s str>) -> Value {
        if let Some(parts) = schema.get("prefixItems").and_then(Value::as_array) {
            let samples = parts.iter().filter_map(|part| self.sample(part, within));
            return samples.collect();
        }
        let item = schema
            .get("items")
            .and_then(|items| self.sample(items, within));
        let times = schema.get("minItems").and_then(Value::as_u64).unwrap_or(1);
        let times = usize::try_from(times).unwrap_or(1).clamp(1, 8);
        item.map_or_else(|| json!([]), |item| vec![item; times].into())
    }
}

fn type_of(schema: &Value) -> Option<&str> {
    let of = schema.get("type")?;
    let several = of
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(Value::as_str);
    of.as_str()
        .or_else(|| several.into_iter().find(|one| *one != "null"))
}

fn text(schema: &Value) -> Option<&'static str> {
    match schema.get("format").and_then(Value::as_str) {
        Some("uuid") => Some(SOME_ID),
        Some("date-time") => Some(SOME_INSTANT),
        Some("date") => Some(SOME_DAY),
        Some("binary") => None,
        _ => Some("text"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_must_be_there_or_has_an_example_is_in_a_request() {
        let schemas = json!({
            "Body": {"type": "object", "required": ["name", "caps"], "properties": {
                "name": {"type": "string", "example": "Ford"},
                "caps": {"$ref": "#/components/schemas/Caps"},
                "places": {"type": ["integer", "null"]},
                "grace": {"type": "integer", "example": 60}
            }},
            "Caps": {"oneOf": [
                {"type": "object", "required": ["kind", "first"], "properties": {
                    "kind": {"type": "string", "enum": ["step"]},
                    "first": {"type": "integer", "minimum": 250}
                }}
            ]}
        });
        let body = json!({"$ref": "#/components/schemas/Body"});
        let sampler = |whole| Sampler {
            schemas: &schemas,
            whole,
        };
        let asked = sampler(false).sample(&body, &mut Vec::new());
        let caps = json!({"kind": "step", "first": 250});
        assert_eq!(
            asked,
            Some(json!({"name": "Ford", "caps": caps, "grace": 60}))
        );
        let answered = sampler(true).sample(&body, &mut Vec::new());
        let whole = json!({"name": "Ford", "caps": caps, "places": 1, "grace": 60});
        assert_eq!(answered, Some(whole));
    }
}
