//! A new catalogue, still without a version.

use league::ids::{CatalogueId, ClubId};
use serde_json::json;
use store::Taken;
use store::catalogues::Catalogue;
use uuid::Uuid;

use crate::may::may;
use crate::record::Scene;
use crate::refusal::when_taken;
use crate::{Action, Actor, Desk, Reason, Refusal, words};

/// # Errors
/// [`Reason::InvalidName`], [`Reason::CatalogueNameTaken`], [`Reason::Forbidden`].
pub async fn create_catalogue(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    name: &str,
) -> Result<Catalogue, Refusal> {
    let name = words::name(name, "/name", "name")?;
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::RunSeason).await?;
            let now = store::clock::now(conn).await?;
            let id = CatalogueId(Uuid::now_v7());
            let catalogue = Catalogue {
                id,
                name: name.to_string(),
                newest: 0,
            };
            let saved = store::catalogues::create(conn, club, &catalogue, now).await;
            when_taken(saved, Taken::CatalogueName, || {
                Refusal::fault(
                    Reason::CatalogueNameTaken,
                    "/name",
                    "The club has a catalogue of this name.",
                )
            })?;
            Scene::in_club(club, actor, now)
                .tell_officers(conn, "create_catalogue", json!({"catalogue": id.0}))
                .await?;
            Ok(catalogue)
        })
        .await
}
