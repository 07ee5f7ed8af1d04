//! The generated Rust: a function for each English text.

use std::fmt::Write;

use crate::catalogue::{Catalogue, File};
use crate::text::Text;

/// Writes the module that `lib.rs` includes.
pub fn write(catalogue: &Catalogue) -> String {
    let [english, ..] = catalogue;
    let mut code = String::new();
    for file in english.iter().filter(|file| !file.of_pages) {
        code += &format!(
            "/// The messages of `{}`.\npub mod {} {{\n",
            file.path,
            in_rust(&file.name)
        );
        for text in &file.texts {
            code += &constructor(text);
        }
        code += "}\n";
    }
    code += "/// The texts of pages.\n";
    code += &allow(
        "new_ret_no_self, clippy::should_implement_trait",
        "the texts choose the names",
    );
    code += "impl crate::Texts {\n";
    for text in english
        .iter()
        .filter(|file| file.of_pages)
        .flat_map(|file| &file.texts)
    {
        code += &method(text);
    }
    code += "}\n";
    code += "/// The Fluent files of each language.\nstatic SOURCES: [&[&str]; 3] = [\n";
    for files in catalogue {
        code += &format!(
            "&[{}],\n",
            list(files, |file| {
                format!(
                    "include_str!(concat!(env!(\"CARGO_MANIFEST_DIR\"), \"/{}\"))",
                    file.path
                )
            })
        );
    }
    code += "];\n/// File, id and variables of each text, for each language.\n#[cfg(test)]\n";
    code += "static TEXTS: [&[(&str, &str, &[&str])]; 3] = [\n";
    for files in catalogue {
        code += &format!(
            "&[{}],\n",
            list(files, |File { path, texts, .. }| {
                let path = path.splitn(3, '/').last().unwrap_or_default();
                list(texts, |Text { id, variables, .. }| {
                    format!("({path:?}, {id:?}, &{variables:?})")
                })
            })
        );
    }
    code + "];\n"
}

/// A function that makes the message of a rule.
fn constructor(text: &Text) -> String {
    format!(
        "{}pub fn {}({}) -> crate::Message {{ {} }}\n",
        head(text),
        in_rust(&text.id),
        parameters(text),
        message(text)
    )
}

/// A method that says a text of a page.
fn method(text: &Text) -> String {
    let (head, name) = (head(text), in_rust(&text.id));
    if text.variables.is_empty() {
        let id = &text.id;
        return format!(
            "{head}pub fn {name}(self) -> std::borrow::Cow<'static, str> {{ self.text({id:?}) }}\n"
        );
    }
    let (parameters, message) = (parameters(text), message(text));
    format!("{head}pub fn {name}(self, {parameters}) -> String {{ self.say(&{message}) }}\n")
}

/// The English words as the documentation, as code so that nothing in them is read as a link.
fn head(text: &Text) -> String {
    let fence = if text.words.contains('`') { "``" } else { "`" };
    let mut head = format!("#[doc = {:?}]\n", format!("{fence}{}{fence}", text.words));
    if text.variables.len() > 6 {
        head += &allow("too_many_arguments", "one for each variable of the text");
    }
    head
}

fn parameters(text: &Text) -> String {
    list(&text.variables, |name| {
        format!("{}: impl Into<crate::Value>", in_rust(name))
    })
}

fn message(text: &Text) -> String {
    let mut values = String::new();
    for name in &text.variables {
        let _ = write!(values, "({name:?}, {}.into()),", in_rust(name));
    }
    format!("crate::Message::new({:?}, vec![{values}])", text.id)
}

fn allow(lint: &str, reason: &str) -> String {
    format!("#[allow(clippy::{lint}, reason = {reason:?})]\n")
}

fn list<T>(items: &[T], write: impl Fn(&T) -> String) -> String {
    let items: Vec<String> = items
        .iter()
        .map(write)
        .filter(|item| !item.is_empty())
        .collect();
    items.join(", ")
}

/// A kebab-case name in snake_case.
fn in_rust(name: &str) -> String {
    name.replace('-', "_")
}
