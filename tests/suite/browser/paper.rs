use std::fs;

use serde_json::json;

use super::window::Window;
use crate::sources::root;

impl Window {
    /// How many pages the browser would print; the paper is kept for people to look at.
    pub fn pages_printed(&self, name: &str) -> usize {
        let paper = self.print();
        let folder = root().join("tests/shots");
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join(format!("{name}.pdf")), &paper).unwrap();
        fs::write(
            folder.join(format!("{name}-printed.png")),
            self.picture_on_paper(),
        )
        .unwrap();
        let text = String::from_utf8_lossy(&paper);
        // ISO 32000-1, 7.7.3.3: every page is a dictionary of this type; the browser leaves these
        // dictionaries uncompressed.
        let pages = text.matches("/Type /Page\n").count();
        assert!(pages > 0, "{name} is no document");
        pages
    }

    /// As it looks on paper, between the margins of A4: 186 mm at 96 pixels an inch.
    fn picture_on_paper(&self) -> Vec<u8> {
        self.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }));
        self.devtools(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": 703, "height": 1032, "deviceScaleFactor": 1, "mobile": false }),
        );
        let picture = self.picture();
        self.devtools("Emulation.setEmulatedMedia", json!({ "media": "" }));
        picture
    }
}
