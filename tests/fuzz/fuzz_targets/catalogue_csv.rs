//! Any bytes are a catalogue or a list of faults, each at a cell of the file.
#![no_main]

use document::catalogue::CatalogueDocument;
use document::csv::catalogue::read_catalogue_csv;
use league::catalogue::Catalogue;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| match read_catalogue_csv(bytes) {
    Ok(catalogue) => {
        let again = Catalogue::try_from(CatalogueDocument::from(&catalogue));
        assert_eq!(again.as_ref(), Ok(&catalogue));
    }
    Err(faults) => {
        assert!(!faults.is_empty());
        assert!(faults.iter().all(|fault| fault.row >= 1));
    }
});
