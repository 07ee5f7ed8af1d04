use std::fs;

use super::window::Window;
use crate::sources::root;

impl Window {
    /// How many pages the browser would print; the paper is kept for people to look at.
    pub fn pages_printed(&self, name: &str) -> usize {
        let paper = self.print();
        let folder = root().join("tests/shots");
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join(format!("{name}.pdf")), &paper).unwrap();
        let text = String::from_utf8_lossy(&paper);
        // ISO 32000-1, 7.7.3.3: every page is a dictionary of this type; the browser leaves these
        // dictionaries uncompressed.
        let pages = text.matches("/Type /Page\n").count();
        assert!(pages > 0, "{name} is no document");
        pages
    }
}
