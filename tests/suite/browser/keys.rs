use serde_json::json;

use super::window::Window;

/// More stops than any page has.
const MAX_STOPS: u32 = 300;

impl Window {
    /// Presses one key as a person would.
    pub fn key(&self, key: &str) {
        let text = match key {
            "Enter" => "\r",
            " " => " ",
            _ => "",
        };
        let code = match key {
            "Tab" => 9,
            "Enter" => 13,
            " " => 32,
            other => panic!("{other} is not a key of these walks"),
        };
        for kind in ["keyDown", "keyUp"] {
            self.devtools(
                "Input.dispatchKeyEvent",
                json!({
                    "type": kind,
                    "key": key,
                    "windowsVirtualKeyCode": code,
                    "text": if kind == "keyDown" { text } else { "" },
                }),
            );
        }
    }

    /// Types into whatever has the focus.
    pub fn type_in(&self, text: &str) {
        self.devtools("Input.insertText", json!({ "text": text }));
    }

    /// Goes on from stop to stop until one bears this name. Wherever the walk stops, the stop can be
    /// seen to have the focus and is not hidden behind anything.
    pub fn tab_to(&self, name: &str) {
        for _ in 0..MAX_STOPS {
            self.key("Tab");
            let stop = self.ask(
                "const stop = document.activeElement;
                 if (!stop || stop === document.body) return null;
                 const box = stop.getBoundingClientRect();
                 const style = getComputedStyle(stop);
                 const label = stop.labels?.[0]?.innerText ?? '';
                 return {
                     name: (stop.getAttribute('aria-label') || label || stop.innerText || '').trim(),
                     marked: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2,
                     seen: box.width > 0 && box.bottom > 0 && box.top < innerHeight,
                 }",
            );
            if stop.is_null() {
                continue;
            }
            assert_eq!(stop["marked"], true, "no focus to be seen on {stop}");
            assert_eq!(stop["seen"], true, "out of sight: {stop}");
            if stop["name"] == name {
                return;
            }
        }
        panic!("{name:?} is not reached by the keyboard on {}", self.path());
    }

    /// Goes to a link or button and uses it, and waits for its page.
    pub fn enter(&self, name: &str) {
        self.tab_to(name);
        self.leaving(name, || self.key("Enter"));
    }
}
