//! Catalogue import from CSV (RFC 4180), one row for each unit.
//!
//! The first row names the columns, in any order:
//!
//! | column | holds | example |
//! |---|---|---|
//! | `faction` | name of the faction | `Sluicebond Syndics` |
//! | `unit` | name of the unit | `Pole-Hands` |
//! | `kind` | unit kind | `Line` |
//! | `models` | one size, a range, or several sizes | `3`, `8-16`, `5\|10` |
//! | `points` | points of the (smallest) size, or of each of several sizes | `64`, `55\|100` |
//! | `points_per_extra_model` | for a range: points of each model above the smallest size | `8` |
//! | `minutes_per_model` | painting minutes of one model | `25` |
//! | `keywords` | may be missing or empty | `toughness 1; on foot` |
//! | `options` | may be missing or empty; each `NAME POINTS [per model] [up to N] [group NAME]` | `pennant 10; tide bell 15` |
//! | `joins` | may be missing or empty: keyword of the units a leader may join | `on foot` |
//! | `most_per_army` | may be missing or empty | `1` |
//!
//! Keys are made of the names. Cells are taken as text: one that begins with `=`, `+`, `-` or `@`
//! is never computed. A byte order mark is passed over, and quotes inside an unquoted field are
//! kept as they stand, which the RFC leaves open.

mod cell_locator;
mod cells;
mod line_counter;

use std::collections::HashMap;

use csv::{ByteRecord, ReaderBuilder};
use league::catalogue::Catalogue;
use league::catalogue::draft::{CatalogueDraft, FactionDraft, UnitDraft};
use league::catalogue::key::slug;
use messages::{Message, catalogue_faults as said};

use cell_locator::CellLocator;
use cells::Cells;
use line_counter::LineCounter;

/// What is wrong with one cell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CellFault {
    /// Line of the file in which the row begins; the header is line 1.
    pub row: u64,
    /// Column as a spreadsheet counts, from 1; 0 when the whole row is meant.
    pub column: usize,
    /// Name of the column; empty when the whole row is meant.
    pub header: String,
    /// Stable code of the fault.
    pub code: String,
    pub message: Message,
}

/// Most units of a table. A row of twenty bytes may mean two hundred sizes: more rows than any catalogue
/// needs would take more memory than they are worth.
pub const MAX_ROWS: usize = 5_000;
/// Most columns of a table.
pub const MAX_COLUMNS: usize = 50;

/// Columns that must be there.
const REQUIRED_COLUMNS: [&str; 6] = [
    "faction",
    "unit",
    "kind",
    "models",
    "points",
    "minutes_per_model",
];
/// Columns that may be there.
const OPTIONAL_COLUMNS: [&str; 5] = [
    "points_per_extra_model",
    "keywords",
    "options",
    "joins",
    "most_per_army",
];

/// Reads a catalogue from CSV.
///
/// # Errors
/// Every [`CellFault`] of the file, ordered by row and column.
pub fn read_catalogue_csv(bytes: &[u8]) -> Result<Catalogue, Vec<CellFault>> {
    let mut reader = ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .from_reader(bytes);
    let mut rows = reader.byte_records().map_while(Result::ok);
    let header = Header::read(&rows.next().unwrap_or_default())?;
    let mut faults = Vec::new();
    let mut draft = CatalogueDraft::default();
    let mut places = CellLocator::default();
    let mut known = HashMap::new();
    let mut lines = LineCounter::new(bytes);
    let filled = rows.filter(|record| !record.iter().all(<[u8]>::is_empty));
    for (count, record) in filled.enumerate() {
        let row = lines.line_of(&record);
        if count == MAX_ROWS {
            let message = said::csv_rows(MAX_ROWS);
            faults.push(whole_row(row, "csv.rows", message));
            break;
        }
        let mut cells = Cells::new(row, &record, &header, &mut faults);
        let faction = cells.text("faction");
        let at = *known.entry(slug(&faction)).or_insert_with(|| {
            draft.factions.push(FactionDraft {
                key: slug(&faction),
                name: faction,
                units: Vec::new(),
            });
            draft.factions.len() - 1
        });
        let unit = read_unit(&mut cells);
        if let Some(faction) = draft.factions.get_mut(at) {
            places.push_row(at, row);
            faction.units.push(unit);
        }
    }
    let built = Catalogue::build(&draft);
    if let Err(build_faults) = &built {
        faults.extend(
            build_faults
                .iter()
                .map(|fault| places.locate(fault, &header)),
        );
    }
    match built {
        Ok(catalogue) if faults.is_empty() => Ok(catalogue),
        _ => {
            faults.sort_by_key(|fault| (fault.row, fault.column));
            Err(faults)
        }
    }
}

fn whole_row(row: u64, code: &str, message: Message) -> CellFault {
    CellFault {
        row,
        column: 0,
        header: String::new(),
        code: code.into(),
        message,
    }
}

fn read_unit(cells: &mut Cells<'_>) -> UnitDraft {
    let name = cells.text("unit");
    UnitDraft {
        key: slug(&name),
        name,
        kind: slug(&cells.text("kind")),
        keywords: cells.several("keywords").map(|word| slug(&word)).collect(),
        sizes: cells.sizes(),
        options: cells.options(),
        joins: cells.optional("joins").map(|word| slug(&word)),
        most_per_army: cells.optional_number("most_per_army"),
        minutes_per_model: cells.number("minutes_per_model").unwrap_or(0),
    }
}

/// Where each column stands.
struct Header(Vec<String>);

impl Header {
    fn read(record: &ByteRecord) -> Result<Self, Vec<CellFault>> {
        if record.len() > MAX_COLUMNS {
            let message = said::csv_columns(record.len(), MAX_COLUMNS);
            return Err(vec![whole_row(1, "csv.columns", message)]);
        }
        let names: Vec<String> = record
            .iter()
            .map(|name| String::from_utf8_lossy(name).trim().to_lowercase())
            .collect();
        let header = Self(names);
        let mut faults = Vec::new();
        for (i, name) in header.0.iter().enumerate() {
            let known = REQUIRED_COLUMNS.contains(&name.as_str())
                || OPTIONAL_COLUMNS.contains(&name.as_str());
            if !known {
                faults.push(header.fault(i + 1, "csv.unknown-column", said::csv_unknown_column()));
            } else if header.0.iter().take(i).any(|other| other == name) {
                faults.push(header.fault(i + 1, "csv.column-twice", said::csv_column_twice()));
            }
        }
        for name in REQUIRED_COLUMNS {
            if header.column(name).is_none() {
                faults.push(CellFault {
                    row: 1,
                    column: 0,
                    header: name.into(),
                    code: "csv.missing-column".into(),
                    message: said::csv_missing_column(name),
                });
            }
        }
        if faults.is_empty() {
            Ok(header)
        } else {
            Err(faults)
        }
    }

    fn fault(&self, column: usize, code: &str, message: Message) -> CellFault {
        CellFault {
            row: 1,
            column,
            header: self.0.get(column - 1).cloned().unwrap_or_default(),
            code: code.into(),
            message,
        }
    }

    /// Column of this name, counted from 1.
    fn column(&self, name: &str) -> Option<usize> {
        self.0.iter().position(|own| own == name).map(|i| i + 1)
    }

    fn columns(&self) -> usize {
        self.0.len()
    }
}
