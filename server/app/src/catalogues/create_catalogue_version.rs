//! Importing a catalogue version: all of it is saved, or every fault is named and nothing is.

use document::catalogue::CatalogueDocument;
use document::csv::catalogue::read_catalogue_csv;
use document::trail::TrailAct;
use league::catalogue::Catalogue;
use league::ids::{CatalogueId, ClubId};
use messages::catalogues;
use store::UniqueConstraint;

use crate::access::authorize;
use crate::refusal::map_unique_violation;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Fault, Reason, Refusal};

/// A catalogue as it was sent.
#[derive(Clone, Debug)]
pub enum CatalogueSource {
    /// The JSON form.
    Json(CatalogueDocument),
    /// A spreadsheet's CSV.
    Csv(Vec<u8>),
}

/// Answers the number of the new version.
///
/// # Errors
/// [`Reason::InvalidCatalogue`] with every fault: by JSON Pointer, or by row and column for CSV.
pub async fn create_catalogue_version(
    app: &App,
    actor: Actor,
    club: ClubId,
    id: CatalogueId,
    source: CatalogueSource,
) -> Result<i32, Refusal> {
    let contents = CatalogueDocument::from(&parse(source)?);
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, Action::RunSeason).await?;
        let number = store::catalogues::find(&mut tx, club, id).await?.newest + 1;
        let now = store::clock::now(&tx).await?;
        let by = actor.account;
        let saved =
            store::catalogues::create_version(&mut tx, club, id, number, &contents, by, now).await;
        map_unique_violation(saved, UniqueConstraint::CatalogueVersion, || {
            Refusal::unavailable(1, "two imports at once")
        })?;
        let act = TrailAct::CreateCatalogueVersion {
            catalogue: id.0,
            number,
        };
        Ok(tx
            .record(OfficersEntry::in_club(club, actor, now, act))
            .await?
            .with(number))
    })
    .await
}

fn parse(source: CatalogueSource) -> Result<Catalogue, Refusal> {
    let faults: Vec<Fault> = match source {
        CatalogueSource::Json(document) => match Catalogue::try_from(document) {
            Ok(catalogue) => return Ok(catalogue),
            Err(faults) => faults.into_iter().map(Fault::from).collect(),
        },
        CatalogueSource::Csv(bytes) => match read_catalogue_csv(&bytes) {
            Ok(catalogue) => return Ok(catalogue),
            Err(faults) => faults
                .into_iter()
                .map(|fault| {
                    let message = match fault.column {
                        0 => catalogues::row_fault(fault.row, fault.message),
                        column => {
                            catalogues::cell_fault(fault.row, column, fault.header, fault.message)
                        }
                    };
                    Fault::new(&fault.code, "", message).at_cell(fault.row, fault.column)
                })
                .collect(),
        },
    };
    let message = catalogues::catalogue_faults(faults.len());
    Err(Refusal::faults(Reason::InvalidCatalogue, message, faults))
}
