//! Names of factions from their keys, where the catalogue is not loaded.

/// `sluicebond-syndics` as `Sluicebond Syndics`.
pub fn faction_name(key: &str) -> String {
    let words = key.split('-').map(|word| {
        let mut letters = word.chars();
        let first = letters.next().map(char::to_uppercase);
        first
            .into_iter()
            .flatten()
            .chain(letters)
            .collect::<String>()
    });
    words.collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_reads_like_a_name() {
        assert_eq!(faction_name("sluicebond-syndics"), "Sluicebond Syndics");
        assert_eq!(faction_name(""), "");
    }
}
