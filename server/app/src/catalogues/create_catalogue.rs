//! A new catalogue, still without a version.

use document::trail::TrailAct;
use league::ids::{CatalogueId, ClubId};
use messages::{catalogues, refusals};
use store::UniqueConstraint;
use store::catalogues::CatalogueRow;
use uuid::Uuid;

use crate::access::authorize;
use crate::refusal::map_unique_violation;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Reason, Refusal, user_text};

/// # Errors
/// [`Reason::InvalidName`], [`Reason::CatalogueNameTaken`], [`Reason::Forbidden`].
pub async fn create_catalogue(
    app: &App,
    actor: Actor,
    club: ClubId,
    name: &str,
) -> Result<CatalogueRow, Refusal> {
    let name = user_text::parse_name(name, "/name", refusals::name_fault)?;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, Action::RunSeason).await?;
        let now = store::clock::now(&tx).await?;
        let id = CatalogueId(Uuid::now_v7());
        let catalogue = CatalogueRow {
            id,
            name: name.to_string(),
            newest: 0,
        };
        let saved = store::catalogues::create(&mut tx, club, &catalogue, now).await;
        map_unique_violation(saved, UniqueConstraint::CatalogueName, || {
            Refusal::fault(
                Reason::CatalogueNameTaken,
                "/name",
                catalogues::catalogue_name_taken(),
            )
        })?;
        let act = TrailAct::CreateCatalogue { catalogue: id.0 };
        Ok(tx
            .record(OfficersEntry::in_club(club, actor, now, act))
            .await?
            .with(catalogue))
    })
    .await
}
