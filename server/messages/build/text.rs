//! A text: one message of a Fluent file, with the variables it needs.

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser;

/// One message of a Fluent file.
pub struct Text {
    pub id: String,
    /// In the order in which they appear.
    pub variables: Vec<String>,
    /// In one line, of each choice the variant that stands for all others.
    pub words: String,
}

/// Reads the messages of a file. Each fault starts with the id or the line.
pub fn read(source: &str, faults: &mut Vec<String>) -> Vec<Text> {
    let resource = parser::parse_runtime(source).unwrap_or_else(|(resource, errors)| {
        faults.extend(errors.iter().map(|error| {
            let before = source.get(..error.pos.start).unwrap_or(source);
            let line = before.matches('\n').count() + 1;
            let slice = error.slice.clone().and_then(|slice| source.get(slice));
            let id = slice.and_then(|slice| slice.split(['=', '\n']).next());
            format!("line {line}: {}: {error}", id.unwrap_or_default().trim())
        }));
        resource
    });
    let mut texts = Vec::new();
    for entry in &resource.body {
        let Entry::Message(message) = entry else {
            continue;
        };
        let id = message.id.name;
        if !message.attributes.is_empty() {
            faults.push(format!(
                "{id}: a text has no attributes; make each a text of its own"
            ));
        }
        let mut reader = Reader::default();
        if let Some(pattern) = &message.value {
            reader.pattern(pattern);
        }
        if let Some(name) = reader.unknown {
            faults.push(format!(
                "{id}: {name} is neither a variable nor a term; hand another text in as a value"
            ));
        }
        let words = reader
            .words
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ");
        let variables = reader.variables;
        texts.push(Text {
            id: id.to_owned(),
            variables,
            words,
        });
    }
    texts
}

/// What is found on the way through a pattern.
#[derive(Default)]
struct Reader {
    variables: Vec<String>,
    words: String,
    /// A reference to what no text may refer to.
    unknown: Option<String>,
}

impl Reader {
    fn pattern(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => self.words.push_str(value),
                PatternElement::Placeable { expression } => self.expression(expression),
            }
        }
    }

    fn expression(&mut self, expression: &Expression<&str>) {
        match expression {
            Expression::Inline(inline) => self.inline(inline),
            Expression::Select { selector, variants } => {
                let before = self.words.len();
                self.inline(selector);
                self.words.truncate(before);
                for variant in variants {
                    let before = self.words.len();
                    self.pattern(&variant.value);
                    if !variant.default {
                        self.words.truncate(before);
                    }
                }
            }
        }
    }

    fn inline(&mut self, inline: &InlineExpression<&str>) {
        match inline {
            InlineExpression::StringLiteral { value }
            | InlineExpression::NumberLiteral { value } => {
                self.words.push_str(value);
            }
            InlineExpression::VariableReference { id } => {
                self.words.push_str(&format!("{{ ${} }}", id.name));
                if !self.variables.iter().any(|known| known == id.name) {
                    self.variables.push(id.name.to_owned());
                }
            }
            InlineExpression::TermReference { id, .. } => {
                self.words.push_str(&format!("{{ -{} }}", id.name));
            }
            InlineExpression::Placeable { expression } => self.expression(expression),
            InlineExpression::MessageReference { id, .. }
            | InlineExpression::FunctionReference { id, .. } => {
                self.unknown = Some(id.name.to_owned());
            }
        }
    }
}
