//! Any JSON of the right shape is a catalogue or a list of faults, each at a place of the document.
#![no_main]

use document::catalogue::CatalogueDocument;
use league::catalogue::Catalogue;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let Ok(document) = serde_json::from_slice::<CatalogueDocument>(bytes) else {
        return;
    };
    let sent: serde_json::Value = serde_json::to_value(&document).unwrap();
    match Catalogue::try_from(document) {
        Ok(catalogue) => {
            let again = Catalogue::try_from(CatalogueDocument::from(&catalogue));
            assert_eq!(again.as_ref(), Ok(&catalogue));
        }
        Err(faults) => {
            assert!(!faults.is_empty());
            for fault in faults {
                // A member that was left out has a place though nothing stands there.
                let above = fault
                    .pointer
                    .rsplit_once('/')
                    .map_or("", |(above, _)| above);
                assert!(sent.pointer(above).is_some(), "{fault:?}");
            }
        }
    }
});
