//! A new catalogue, still without a version.

use league::ids::{CatalogueId, ClubId};
use serde_json::json;
use store::UniqueConstraint;
use store::catalogues::CatalogueRow;
use uuid::Uuid;

use crate::access::authorize;
use crate::record::Scene;
use crate::refusal::map_unique_violation;
use crate::{Action, Actor, App, Reason, Refusal, user_text};

/// # Errors
/// [`Reason::InvalidName`], [`Reason::CatalogueNameTaken`], [`Reason::Forbidden`].
pub async fn create_catalogue(
    app: &App,
    actor: Actor,
    club: ClubId,
    name: &str,
) -> Result<CatalogueRow, Refusal> {
    let name = user_text::parse_name(name, "/name", "name")?;
    app.store
        .write(async |conn| {
            authorize(conn, actor, club, Action::RunSeason).await?;
            let now = store::clock::now(conn).await?;
            let id = CatalogueId(Uuid::now_v7());
            let catalogue = CatalogueRow {
                id,
                name: name.to_string(),
                newest: 0,
            };
            let saved = store::catalogues::create(conn, club, &catalogue, now).await;
            map_unique_violation(saved, UniqueConstraint::CatalogueName, || {
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
