//! The cells of one row, read by column name.

use csv::ByteRecord;
use league::catalogue::MAX_SIZES;
use league::catalogue::draft::{OptionDraft, SizeDraft};
use league::catalogue::key::slug;
use messages::{Message, catalogue_faults as said};

use super::{CellFault, Header, whole_row};

/// One row; every cell that cannot be read is noted and stands in as something harmless.
pub(super) struct Cells<'a> {
    row: u64,
    record: &'a ByteRecord,
    header: &'a Header,
    faults: &'a mut Vec<CellFault>,
}

impl<'a> Cells<'a> {
    pub(super) fn new(
        row: u64,
        record: &'a ByteRecord,
        header: &'a Header,
        faults: &'a mut Vec<CellFault>,
    ) -> Self {
        if record.len() != header.columns() {
            let (cells, columns) = (record.len(), header.columns());
            let message = said::csv_cells(cells, columns);
            faults.push(whole_row(row, "csv.cells", message));
        }
        Self {
            row,
            record,
            header,
            faults,
        }
    }

    fn fault(&mut self, name: &str, code: &str, message: Message) {
        self.faults.push(CellFault {
            row: self.row,
            column: self.header.column(name).unwrap_or(0),
            header: name.into(),
            code: code.into(),
            message,
        });
    }

    pub(super) fn text(&mut self, name: &str) -> String {
        let column = self.header.column(name).unwrap_or(0);
        let bytes = column.checked_sub(1).and_then(|i| self.record.get(i));
        match std::str::from_utf8(bytes.unwrap_or_default()) {
            Ok(text) => text.trim().into(),
            Err(_) => {
                self.fault(name, "csv.encoding", said::csv_encoding());
                String::new()
            }
        }
    }

    pub(super) fn optional(&mut self, name: &str) -> Option<String> {
        Some(self.text(name)).filter(|text| !text.is_empty())
    }

    pub(super) fn several(&mut self, name: &str) -> impl Iterator<Item = String> + use<> {
        let parts: Vec<String> = self
            .text(name)
            .split(';')
            .map(|part| part.trim().into())
            .filter(|part: &String| !part.is_empty())
            .collect();
        parts.into_iter()
    }

    pub(super) fn number(&mut self, name: &str) -> Option<i64> {
        let text = self.text(name);
        self.whole(name, &text)
    }

    pub(super) fn optional_number(&mut self, name: &str) -> Option<i64> {
        let text = self.optional(name)?;
        self.whole(name, &text)
    }

    fn whole(&mut self, name: &str, text: &str) -> Option<i64> {
        let number = text.trim().parse().ok();
        if number.is_none() {
            self.fault(name, "csv.number", said::csv_number(text));
        }
        number
    }

    fn wholes(&mut self, name: &str) -> Option<Vec<i64>> {
        let text = self.text(name);
        let numbers: Vec<Option<i64>> =
            text.split('|').map(|part| self.whole(name, part)).collect();
        numbers.into_iter().collect()
    }

    /// The sizes that `models`, `points` and `points_per_extra_model` tell together.
    pub(super) fn sizes(&mut self) -> Vec<SizeDraft> {
        let models = self.text("models");
        let extra = self.optional_number("points_per_extra_model");
        let sizes = match models
            .split_once('-')
            .filter(|(least, _)| !least.is_empty())
        {
            Some((least, most)) => self.range(least, most, extra.unwrap_or(0)),
            None => self.listed(),
        };
        let stand_in = SizeDraft {
            models: 1,
            points: 0,
        };
        sizes.unwrap_or_else(|| vec![stand_in])
    }

    fn range(&mut self, least: &str, most: &str, extra: i64) -> Option<Vec<SizeDraft>> {
        let (least, most) = (self.whole("models", least), self.whole("models", most));
        let points = self.number("points");
        let (least, most, points) = (least?, most?, points?);
        let longest = i64::try_from(MAX_SIZES).unwrap_or(i64::MAX);
        let steps = most
            .checked_sub(least)
            .filter(|steps| (0..longest).contains(steps));
        if steps.is_none() {
            let message = said::csv_range(longest);
            self.fault("models", "csv.range", message);
        }
        let size = |step: i64| SizeDraft {
            models: least.saturating_add(step),
            points: points.saturating_add(extra.saturating_mul(step)),
        };
        Some((0..=steps?).map(size).collect())
    }

    fn listed(&mut self) -> Option<Vec<SizeDraft>> {
        let (models, points) = (self.wholes("models"), self.wholes("points"));
        let (models, points) = (models?, points?);
        if models.len() != points.len() {
            let message = said::csv_sizes(points.len(), models.len());
            self.fault("points", "csv.sizes", message);
            return None;
        }
        let sizes = models.into_iter().zip(points);
        Some(
            sizes
                .map(|(models, points)| SizeDraft { models, points })
                .collect(),
        )
    }

    /// The options, each `NAME POINTS [per model] [up to N] [group NAME]`.
    pub(super) fn options(&mut self) -> Vec<OptionDraft> {
        let mut options = Vec::new();
        for text in self.several("options") {
            match read_option(&text) {
                Some(option) => options.push(option),
                None => self.fault("options", "csv.option", said::csv_option(&text)),
            }
        }
        options
    }
}

fn read_option(text: &str) -> Option<OptionDraft> {
    let mut option = OptionDraft::default();
    let mut rest = text;
    if let Some((before, group)) = rest.rsplit_once(" group ") {
        option.group = Some(slug(group));
        rest = before.trim_end();
    }
    if let Some((before, limit)) = rest.rsplit_once(" up to ") {
        option.limit = Some(limit.trim().parse().ok()?);
        rest = before.trim_end();
    }
    if let Some(before) = rest.strip_suffix(" per model") {
        option.per_model = true;
        rest = before.trim_end();
    }
    let (name, points) = rest.rsplit_once(' ')?;
    option.name = name.trim().into();
    option.key = slug(name);
    option.points = points.parse().ok()?;
    Some(option)
}
