//! Rules that no list can satisfy, as faults of the season that has them.

use league::lists::satisfiable::Unsatisfiable;

use crate::fault::Fault;

/// The fault, with a pointer below the list rules: at one rule where that is to blame.
pub fn fault(found: &Unsatisfiable) -> Fault {
    use Unsatisfiable as U;
    let at = |index: &usize| format!("/{index}");
    match found {
        U::UnknownKind(index, _) => Fault::new(at(index), "rules.unknown-kind", found),
        U::UnknownKeyword(index, _) => Fault::new(at(index), "rules.unknown-keyword", found),
        U::Contradiction(index) => Fault::new(at(index), "rules.contradiction", found),
        U::NoList(..) => Fault::new("", "rules.no-list", found),
        U::ReturnsTooMuch { least, cap, .. } => {
            Fault::new("", "rules.returns-too-much", found).with(cap.get(), least.get())
        }
        U::GrowsTooSlowly { least, most, .. } => {
            Fault::new("", "rules.grows-too-slowly", found).with(most.get(), least.get())
        }
    }
}
