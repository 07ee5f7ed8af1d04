//! The project's own files, as text, for the tests that read them.

use std::fs;
use std::path::{Path, PathBuf};

/// One file of the project.
pub struct Source {
    /// From the project's root, such as `server/league/src/points.rs`.
    pub path: String,
    pub text: String,
}

/// The root of the project.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .canonicalize()
        .unwrap()
}

/// Every file below a folder whose name ends so, in the order of their paths.
pub fn files(folder: &str, ending: &str) -> Vec<Source> {
    let root = root();
    let mut found = Vec::new();
    let mut folders = vec![root.join(folder)];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            if path.is_dir() && !name.starts_with('.') && name != "target" {
                folders.push(path);
            } else if name.ends_with(ending) {
                let text = fs::read_to_string(&path).unwrap();
                let path = path
                    .strip_prefix(&root)
                    .unwrap()
                    .to_string_lossy()
                    .into_owned();
                found.push(Source { path, text });
            }
        }
    }
    found.sort_by(|one, other| one.path.cmp(&other.path));
    found
}

impl Source {
    /// The lines of code that hold one of these words, as `path:line: word`.
    pub fn lines_with(&self, words: &[&str]) -> Vec<String> {
        let code = self.text.lines().enumerate().filter(|(_, line)| {
            let line = line.trim_start();
            !line.starts_with("//") && !line.starts_with("--")
        });
        code.flat_map(|(index, line)| {
            let held = words.iter().filter(move |word| holds(line, word));
            held.map(move |word| format!("{}:{}: {word}", self.path, index + 1))
        })
        .collect()
    }

    /// The file's name without its ending.
    pub fn stem(&self) -> &str {
        Path::new(&self.path)
            .file_stem()
            .and_then(|stem| stem.to_str())
            .unwrap()
    }

    /// Whether the file lies below this folder of the project.
    pub fn is_in(&self, folder: &str) -> bool {
        Path::new(&self.path).starts_with(folder)
    }
}

/// Whether a line holds a word, and not just a part of a longer one.
fn holds(line: &str, word: &str) -> bool {
    line.match_indices(word).any(|(start, _)| {
        let before = line[..start].chars().next_back();
        let after = line[start + word.len()..].chars().next();
        let goes_on = |beside: Option<char>| beside.is_some_and(char::is_alphanumeric);
        let begins_earlier = word.starts_with(char::is_alphanumeric) && goes_on(before);
        let ends_later = word.ends_with(char::is_alphanumeric) && goes_on(after);
        !begins_earlier && !ends_later
    })
}
