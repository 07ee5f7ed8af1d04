//! The message catalogue: the Fluent files of every language.

use std::collections::BTreeMap;
use std::path::Path;
use std::{fs, io};

use crate::text::{self, Text};

/// The folders of `locales`, in the order of `Language::ALL`.
const LANGUAGES: [&str; 3] = ["en", "de", "fr"];

/// Words that Rust keeps for itself.
const KEYWORDS: &str = "abstract as async await become box break const continue crate do dyn else enum extern \
    false final fn for gen if impl in let loop macro match mod move mut override priv pub ref return self static \
    struct super trait true try type typeof unsafe unsized use virtual where while yield";

/// One Fluent file.
pub struct File {
    /// From the crate's root, such as `locales/en/pages/site.ftl`.
    pub path: String,
    /// Without the folder and the ending, such as `site`.
    pub name: String,
    /// Whether it holds texts of pages, or else messages of rules.
    pub of_pages: bool,
    pub texts: Vec<Text>,
}

/// The files of each language, in the order of their paths.
pub type Catalogue = [Vec<File>; 3];

/// Reads all of them.
pub fn read(root: &Path, faults: &mut Vec<String>) -> io::Result<Catalogue> {
    let mut folders = entries(root, "locales")?;
    folders.retain(|folder| !LANGUAGES.contains(&folder.as_str()));
    faults.extend(folders.iter().map(|folder| {
        format!("locales/{folder}: no language of this folder is known; write it down in `Language` and in build/catalogue.rs")
    }));
    let mut catalogue = Catalogue::default();
    for (language, files) in LANGUAGES.iter().zip(&mut catalogue) {
        let folder = format!("locales/{language}");
        read_folder(root, &folder, false, files, faults)?;
        read_folder(root, &format!("{folder}/pages"), true, files, faults)?;
        find_clashes(files, faults);
    }
    Ok(catalogue)
}

fn read_folder(
    root: &Path,
    folder: &str,
    of_pages: bool,
    files: &mut Vec<File>,
    faults: &mut Vec<String>,
) -> io::Result<()> {
    for entry in entries(root, folder)? {
        let path = format!("{folder}/{entry}");
        if let Some(name) = entry.strip_suffix(".ftl") {
            let mut told = Vec::new();
            let texts = text::read(&fs::read_to_string(root.join(&path))?, &mut told);
            if !is_name(name) {
                told.push("the name of a file is kebab-case and no keyword of Rust".to_owned());
            }
            for text in &texts {
                let names = text.variables.iter().chain([&text.id]);
                let strange = names.filter(|name| !is_name(name));
                told.extend(strange.map(|name| {
                    format!(
                        "{}: the name {name} is not kebab-case, or a keyword of Rust",
                        text.id
                    )
                }));
            }
            faults.extend(told.into_iter().map(|fault| format!("{path}: {fault}")));
            let name = name.to_owned();
            files.push(File {
                path,
                name,
                of_pages,
                texts,
            });
        } else if root.join(&path).is_dir() && (of_pages || entry != "pages") {
            faults.push(format!(
                "{path}: files lie in the folder of the language or in its folder pages"
            ));
        }
    }
    Ok(())
}

/// The names in a folder, sorted; none where it is missing.
fn entries(root: &Path, folder: &str) -> io::Result<Vec<String>> {
    let folder = root.join(folder);
    if !folder.is_dir() {
        return Ok(Vec::new());
    }
    let names =
        fs::read_dir(folder)?.map(|entry| Ok(entry?.file_name().to_string_lossy().into_owned()));
    let mut names = names.collect::<io::Result<Vec<_>>>()?;
    names.sort();
    Ok(names)
}

/// Whether the name makes a name in Rust, and no other name makes the same.
fn is_name(name: &str) -> bool {
    let mut parts = name.split('-');
    name.starts_with(|first: char| first.is_ascii_lowercase())
        && parts.all(|part| {
            !part.is_empty() && part.chars().all(|c| matches!(c, 'a'..='z' | '0'..='9'))
        })
        && !KEYWORDS.split_whitespace().any(|keyword| keyword == name)
}

fn find_clashes(files: &[File], faults: &mut Vec<String>) {
    let mut seen = BTreeMap::new();
    for file in files {
        for Text { id, .. } in &file.texts {
            if let Some(other) = seen.insert(id, &file.path) {
                faults.push(format!(
                    "{}: {id}: stands in {other} too; an id is one text's alone",
                    file.path
                ));
            }
        }
    }
}
