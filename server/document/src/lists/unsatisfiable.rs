//! Rules that no list can satisfy, as faults of the season that has them.

use league::lists::satisfiable::Unsatisfiable;

use crate::fault::DocumentFault;

/// The fault, with a pointer below the list rules: at one rule where that is to blame.
pub fn unsatisfiable_fault(found: &Unsatisfiable) -> DocumentFault {
    use Unsatisfiable as U;
    let at = |index: &usize| format!("/{index}");
    let message = found.message();
    match found {
        U::UnknownKind(index, _) => DocumentFault::new(at(index), "rules.unknown-kind", message),
        U::UnknownKeyword(index, _) => {
            DocumentFault::new(at(index), "rules.unknown-keyword", message)
        }
        U::Contradiction(index) => DocumentFault::new(at(index), "rules.contradiction", message),
        U::NoList(..) => DocumentFault::new("", "rules.no-list", message),
        U::ReturnsTooMuch { least, cap, .. } => {
            DocumentFault::new("", "rules.returns-too-much", message)
                .with_limit(cap.get(), least.get())
        }
        U::GrowsTooSlowly { least, most, .. } => {
            DocumentFault::new("", "rules.grows-too-slowly", message)
                .with_limit(most.get(), least.get())
        }
    }
}
