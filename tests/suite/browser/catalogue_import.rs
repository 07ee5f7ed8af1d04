use super::window::{Size, Window};
use crate::harness::Stage;
use crate::sources::root;

#[test]
fn a_catalogue_is_imported_from_csv_and_every_fault_is_named_by_its_row() {
    let stage = Stage::draft();
    let club = &stage.club;
    let csv = std::fs::read_to_string(root().join("demo/catalogue.csv")).unwrap();
    let csv = csv.replace("\r\n", "\n");
    let faulty = csv
        .replacen("Leader,1,70,", "Leader,1,seventy,", 1)
        .replacen("Line,8-16,64,8", "Line,16-8,64,8", 1);
    assert_ne!(faulty, csv);
    let organiser = Window::of(&stage.server, "Wennable", Size::Laptop);
    organiser.go(&club.page("catalogues"));
    organiser.fill("Name of the catalogue", "Quernlight, second printing");
    organiser.set("Catalogue as CSV or JSON", &faulty);
    organiser.press("Import");
    organiser.reads("Row 2, column 5");
    organiser.reads("Row 4, column 4");
    assert_eq!(
        organiser.value("Catalogue as CSV or JSON").trim(),
        faulty.trim()
    );
    organiser.look("catalogue-faults");
    organiser.resize(Size::Laptop);
    organiser.set("Catalogue as CSV or JSON", &csv);
    organiser.press("Import");
    organiser.reads("Quernlight, second printing versions: 1");
    organiser.look("catalogue-imported");
}
