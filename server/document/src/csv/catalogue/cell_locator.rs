//! Cell locator: from a JSON pointer into the draft back to the cell it came from.

use league::catalogue::fault::CatalogueFault;

use super::{CellFault, Header};

/// The row of every unit, by faction and unit.
#[derive(Default)]
pub(super) struct CellLocator(Vec<Vec<u64>>);

impl CellLocator {
    /// The next unit of this faction stands in this row.
    pub(super) fn push_row(&mut self, faction: usize, row: u64) {
        if self.0.len() <= faction {
            self.0.resize(faction + 1, Vec::new());
        }
        if let Some(rows) = self.0.get_mut(faction) {
            rows.push(row);
        }
    }

    /// The cell that a fault of the draft is about.
    pub(super) fn locate(&self, fault: &CatalogueFault, header: &Header) -> CellFault {
        let steps: Vec<&str> = fault.pointer.split('/').skip(1).collect();
        let index = |step: usize| steps.get(step).and_then(|text| text.parse::<usize>().ok());
        let rows = index(1).and_then(|faction| self.0.get(faction));
        let row = rows.and_then(|rows| rows.get(index(3).unwrap_or(0)));
        let name = match steps.as_slice() {
            [_, _, "units", _, "key" | "name", ..] => "unit",
            [_, _, "units", _, "sizes", _, "points"] => "points",
            [_, _, "units", _, "sizes", ..] => "models",
            [_, _, "units", _, member, ..] => member,
            _ => "faction",
        };
        CellFault {
            row: row.copied().unwrap_or(1),
            column: header.column(name).unwrap_or(0),
            header: name.into(),
            code: fault.kind.code().into(),
            message: fault.kind.message(),
        }
    }
}
