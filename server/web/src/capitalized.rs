//! Text that begins with a capital letter.

/// The text with its first letter in upper case: what a rule says within other sentences begins without.
pub fn capitalized(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}
