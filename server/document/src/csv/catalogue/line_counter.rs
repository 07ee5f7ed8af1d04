//! Line counter: the line of the file in which a record begins.

use csv::ByteRecord;

/// Counts the lines up to each record. The reader's own count starts a record at the line feed
/// that ends the one before.
pub(super) struct LineCounter<'a> {
    rest: &'a [u8],
    consumed: usize,
    line: u64,
}

impl<'a> LineCounter<'a> {
    pub(super) fn new(bytes: &'a [u8]) -> Self {
        Self {
            rest: bytes,
            consumed: 0,
            line: 1,
        }
    }

    /// The line in which the record begins; records must come in their order.
    pub(super) fn line_of(&mut self, record: &ByteRecord) -> u64 {
        let byte = record.position().map_or(0, csv::Position::byte);
        let start = usize::try_from(byte).unwrap_or(usize::MAX);
        while let Some((&byte, rest)) = self.rest.split_first()
            && (self.consumed < start || matches!(byte, b'\r' | b'\n'))
        {
            self.line += u64::from(byte == b'\n');
            self.rest = rest;
            self.consumed += 1;
        }
        self.line
    }
}
