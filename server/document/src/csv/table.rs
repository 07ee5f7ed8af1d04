//! CSV output (RFC 4180) that is safe to open in a spreadsheet program.

use serde::Serialize;
use serde_json::Value;

/// Something that can be read row by row in a spreadsheet program.
pub trait CsvTable {
    /// The names of the columns.
    fn header(&self) -> Vec<String>;
    /// The cells. What people typed goes through [`escape_formula`].
    fn rows(&self) -> Vec<Vec<String>>;
}

/// A sheet as CSV, its first row the names of the columns.
///
/// # Errors
/// Rows of different lengths.
pub fn write_csv(sheet: &impl CsvTable) -> csv::Result<Vec<u8>> {
    let mut writer = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(Vec::new());
    for row in std::iter::once(sheet.header()).chain(sheet.rows()) {
        writer.write_record(row)?;
    }
    writer
        .into_inner()
        .map_err(|cause| cause.into_error().into())
}

/// A text that somebody typed, as a cell that no spreadsheet program takes for a formula: what would
/// begin one has an apostrophe before it (OWASP, CSV Injection).
pub fn escape_formula(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

/// A value, or an empty cell.
pub fn optional_cell(value: Option<impl ToString>) -> String {
    value.map(|value| value.to_string()).unwrap_or_default()
}

/// A value that is one word of JSON, as that word.
pub fn word_cell(value: &impl Serialize) -> String {
    let value = serde_json::to_value(value);
    // Every value that comes here is a word; anything else would be an empty cell.
    let word = value.as_ref().ok().and_then(Value::as_str);
    word.unwrap_or_default().to_owned()
}

/// The names of columns.
pub fn columns(names: &[&str]) -> Vec<String> {
    names.iter().map(|&name| name.to_owned()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    struct Names(Vec<String>);

    impl CsvTable for Names {
        fn header(&self) -> Vec<String> {
            columns(&["name"])
        }

        fn rows(&self) -> Vec<Vec<String>> {
            self.0
                .iter()
                .map(|name| vec![escape_formula(name)])
                .collect()
        }
    }

    #[test]
    fn no_name_is_a_formula() {
        let names = [
            "=1+1",
            "+1",
            "-1",
            "@SUM(A1)",
            "\t=1",
            "Wennable, \"the\" Bold",
        ];
        let sheet = Names(names.map(str::to_owned).to_vec());
        let text = String::from_utf8(write_csv(&sheet).unwrap()).unwrap();
        assert_eq!(
            text,
            "name\r\n'=1+1\r\n'+1\r\n'-1\r\n'@SUM(A1)\r\n'\t=1\r\n\"Wennable, \"\"the\"\" Bold\"\r\n"
        );
    }
}
