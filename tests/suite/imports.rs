//! The import graph of a crate: which file uses which, read from the `use` lines.

use std::collections::{BTreeMap, BTreeSet};

use crate::sources::files;

/// Modules, named like `pairing::proof::checker`, each with those that it imports.
///
/// An import of something re-exported leads to where it is defined: a `pub use` for the outside makes
/// no circle by itself. Files of tests are left out.
pub struct Imports(BTreeMap<String, BTreeSet<String>>);

impl Imports {
    /// The imports within the crate whose sources lie in this folder.
    pub fn read(folder: &str) -> Self {
        let sources = files(folder, ".rs");
        let texts: BTreeMap<String, &str> = sources
            .iter()
            .map(|source| (module_of(&source.path[folder.len() + 1..]), &*source.text))
            .filter(|(module, _)| !module.split("::").any(|name| name.ends_with("tests")))
            .collect();
        let modules: BTreeSet<&str> = texts.keys().map(String::as_str).collect();
        let uses = |beginning: &'static str| {
            let of = |(module, text): (&String, &&str)| {
                let paths = used_paths(text, beginning).into_iter();
                let absolute = paths.filter_map(|path| absolute(module, &path, &modules));
                (module.clone(), absolute.collect::<Vec<_>>())
            };
            texts.iter().map(of).collect::<BTreeMap<_, _>>()
        };
        let exports = uses("pub use ");
        let targets = |(module, paths): (String, Vec<String>)| {
            let defined = paths.iter().map(|path| defining_module(path, &exports));
            let others = defined.filter(|target| *target != module).collect();
            (module, others)
        };
        Self(uses("use ").into_iter().map(targets).collect())
    }

    /// Every module whose name begins so.
    pub fn modules_in(&self, room: &str) -> impl Iterator<Item = &String> {
        self.0.keys().filter(move |module| module.starts_with(room))
    }

    /// What a module imports, directly or by way of others.
    pub fn reachable_from(&self, module: &str) -> BTreeSet<&str> {
        let imported = |module: &str| self.0.get(module).into_iter().flatten();
        let mut reached = BTreeSet::new();
        let mut open: Vec<&String> = imported(module).collect();
        while let Some(next) = open.pop() {
            if reached.insert(next.as_str()) {
                open.extend(imported(next));
            }
        }
        reached
    }

    /// Groups of modules that all reach each other.
    pub fn circles(&self) -> BTreeSet<Vec<&str>> {
        let reached: BTreeMap<&str, BTreeSet<&str>> = self
            .0
            .keys()
            .map(|module| (module.as_str(), self.reachable_from(module)))
            .collect();
        let mut circles = BTreeSet::new();
        for (module, ahead) in &reached {
            let back = |other: &&str| reached.get(other).is_some_and(|it| it.contains(module));
            circles.insert(ahead.iter().copied().filter(back).collect::<Vec<_>>());
        }
        circles.retain(|circle| circle.len() > 1);
        circles
    }
}

fn module_of(path: &str) -> String {
    let module = path.trim_end_matches(".rs").trim_end_matches("/mod");
    match module {
        "lib" => String::new(),
        module => module.replace('/', "::"),
    }
}

/// The paths of all `use` declarations that begin so, one for each name.
fn used_paths(text: &str, beginning: &str) -> Vec<String> {
    let declarations = text.split('\n').scan(0, |start, line| {
        let at = *start;
        *start += line.len() + 1;
        Some((at, line))
    });
    declarations
        .filter(|(_, line)| line.starts_with(beginning))
        .filter_map(|(at, _)| text[at + beginning.len()..].split(';').next())
        .flat_map(|tree| expand(&tree.split_whitespace().collect::<Vec<_>>().join(" ")))
        .collect()
}

/// `a::{b, c::{d, e}}` as `a::b`, `a::c::d`, `a::c::e`.
fn expand(tree: &str) -> Vec<String> {
    let Some((prefix, rest)) = tree.split_once('{') else {
        return vec![tree.trim().to_owned()];
    };
    let inner = rest.strip_suffix('}').unwrap_or(rest);
    let mut depth = 0;
    let branches = inner.split(|c| {
        depth += i32::from(c == '{') - i32::from(c == '}');
        c == ',' && depth == 0
    });
    let branches = branches.map(str::trim).filter(|branch| !branch.is_empty());
    branches
        .flat_map(expand)
        .map(|path| format!("{prefix}{path}"))
        .collect()
}

/// The path from the crate's root; `None` for one into another crate.
fn absolute(module: &str, path: &str, modules: &BTreeSet<&str>) -> Option<String> {
    let mut base: Vec<&str> = module.split("::").filter(|name| !name.is_empty()).collect();
    let mut names = path.split(" as ").next()?.split("::").peekable();
    match names.peek() {
        Some(&"crate") => {
            base.clear();
            names.next();
        }
        Some(&"super") => {
            while names.next_if_eq(&"super").is_some() {
                base.pop();
            }
        }
        Some(child) => {
            let child = [base.clone(), vec![child]].concat().join("::");
            modules.contains(child.as_str()).then_some(())?;
        }
        None => return None,
    }
    Some(base.into_iter().chain(names).collect::<Vec<_>>().join("::"))
}

/// The module in which the last name of a path is defined, re-exports followed.
fn defining_module(path: &str, exports: &BTreeMap<String, Vec<String>>) -> String {
    let mut path = path.to_owned();
    loop {
        if exports.contains_key(&path) {
            return path;
        }
        let (module, name) = path.rsplit_once("::").unwrap_or(("", &path));
        let exported = exports.get(module).into_iter().flatten();
        let mut exported = exported.filter(|it| it.rsplit("::").next() == Some(name));
        path = match exported.next() {
            Some(further) if *further != path => further.clone(),
            _ => module.to_owned(),
        };
    }
}

#[test]
fn nested_groups_are_expanded() {
    let text = "use a::{b, c::{d, e}};\npub use f::g;\n";
    assert_eq!(used_paths(text, "use "), ["a::b", "a::c::d", "a::c::e"]);
    assert_eq!(used_paths(text, "pub use "), ["f::g"]);
}
