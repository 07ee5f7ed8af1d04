use std::fs;

use serde_json::{Value, json};

use super::window::{Size, Window};
use crate::sources::root;

/// Rules of WCAG 2.2, level AA, as far as a program can judge them, and the checker's own advice.
const RULES: &str = r#"{ runOnly: [
    "wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"
] }"#;

impl Window {
    /// Looks at the page as it stands: both sizes, both themes. It breaks no rule that can be
    /// checked, scrolls in one direction only, and makes the browser complain of nothing. The
    /// pictures are for people to look at.
    #[track_caller]
    pub fn look(&self, name: &str) {
        let mut faults = Vec::new();
        for (size, width) in [(Size::Phone, "phone"), (Size::Laptop, "laptop")] {
            self.resize(size);
            for theme in ["light", "dark"] {
                self.theme(theme);
                let which = format!("{name}-{width}-{theme}");
                faults.extend(
                    self.broken_rules()
                        .into_iter()
                        .map(|rule| format!("{which}: {rule}")),
                );
                faults.extend(
                    self.too_wide()
                        .map(|what| format!("{which}: too wide: {what}")),
                );
                self.keep_picture(&which);
            }
        }
        self.theme("light");
        faults.extend(self.complaints());
        assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
    }

    fn broken_rules(&self) -> Vec<String> {
        let checker = root().join("tests/browser/node_modules/axe-core/axe.min.js");
        let checker = fs::read_to_string(checker).expect("tests/run installs the checker");
        if self.ask("return typeof axe === 'undefined'") == json!(true) {
            self.ask(&checker);
        }
        let report = self.ask_later(&format!(
            "const done = arguments[arguments.length - 1];
             axe.run(document, {RULES}).then(done, (fault) => done({{ fault: String(fault) }}))"
        ));
        let broken = report["violations"].as_array();
        let broken = broken.unwrap_or_else(|| panic!("{report}"));
        broken.iter().map(rule_and_places).collect()
    }

    /// What makes the page wider than its window.
    fn too_wide(&self) -> Option<String> {
        let widest = self.ask(
            "const width = document.documentElement.clientWidth;
             if (document.documentElement.scrollWidth <= width) return null;
             const wide = [...document.body.querySelectorAll('*')].filter((element) =>
                 element.getBoundingClientRect().right > width + 1);
             return wide.map((element) => element.outerHTML.slice(0, 80)).join(' | ')",
        );
        widest.as_str().map(str::to_owned)
    }

    fn keep_picture(&self, name: &str) {
        let height = self.ask("return document.documentElement.scrollHeight");
        let width = self.ask("return document.documentElement.clientWidth");
        let size = |height: &Value| json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        self.devtools("Emulation.setDeviceMetricsOverride", size(&height));
        let folder = root().join("tests/shots");
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join(format!("{name}.png")), self.picture()).unwrap();
    }
}

fn rule_and_places(rule: &Value) -> String {
    let places = rule["nodes"].as_array().unwrap().iter();
    let places: Vec<String> = places
        .map(|node| format!("{} {}", node["html"], node["failureSummary"]))
        .collect();
    format!("{}: {}", rule["id"], places.join("; "))
}
