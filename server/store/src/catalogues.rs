//! Catalogues and their numbered versions, which never change.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::catalogue::CatalogueDocument;
use league::ids::{AccountId, CatalogueId, ClubId};
use league::time::Instant;
use uuid::Uuid;

use crate::json::Json;
use crate::schema::{catalogue_versions, catalogues};
use crate::{Conn, Fault};

/// A catalogue of a club.
#[derive(Clone, Debug)]
pub struct Catalogue {
    /// Identity.
    pub id: CatalogueId,
    /// Name.
    pub name: String,
    /// Its newest version; 0 before the first import.
    pub newest: i32,
}

/// # Errors
/// [`Taken::CatalogueName`](crate::Taken::CatalogueName), or a fault of the database.
pub async fn create(
    conn: &mut Conn,
    club: ClubId,
    catalogue: &Catalogue,
    now: Instant,
) -> Result<(), Fault> {
    diesel::insert_into(catalogues::table)
        .values((
            catalogues::club_id.eq(club.0),
            catalogues::catalogue_id.eq(catalogue.id.0),
            catalogues::name.eq(&catalogue.name),
            catalogues::created_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// The catalogues of a club, by name.
///
/// # Errors
/// A [`Fault`] of the database.
pub async fn list(conn: &mut Conn, club: ClubId) -> Result<Vec<Catalogue>, Fault> {
    let rows: Vec<(Uuid, String)> = catalogues::table
        .filter(catalogues::club_id.eq(club.0))
        .order(catalogues::name)
        .select((catalogues::catalogue_id, catalogues::name))
        .load(conn)
        .await?;
    let mut found = Vec::with_capacity(rows.len());
    for (id, name) in rows {
        let id = CatalogueId(id);
        found.push(Catalogue {
            id,
            name,
            newest: find_newest(conn, club, id).await?,
        });
    }
    Ok(found)
}

/// # Errors
/// [`Fault::NotFound`], or a fault of the database.
pub async fn find(conn: &mut Conn, club: ClubId, id: CatalogueId) -> Result<Catalogue, Fault> {
    let name = catalogues::table
        .find((club.0, id.0))
        .select(catalogues::name)
        .first(conn)
        .await?;
    Ok(Catalogue {
        id,
        name,
        newest: find_newest(conn, club, id).await?,
    })
}

async fn find_newest(conn: &mut Conn, club: ClubId, id: CatalogueId) -> Result<i32, Fault> {
    let newest: Option<i32> = catalogue_versions::table
        .filter(catalogue_versions::club_id.eq(club.0))
        .filter(catalogue_versions::catalogue_id.eq(id.0))
        .select(diesel::dsl::max(catalogue_versions::number))
        .first(conn)
        .await?;
    Ok(newest.unwrap_or(0))
}

/// # Errors
/// [`Taken::CatalogueVersion`](crate::Taken::CatalogueVersion) when another import was faster.
pub async fn create_version(
    conn: &mut Conn,
    club: ClubId,
    id: CatalogueId,
    number: i32,
    contents: &CatalogueDocument,
    by: AccountId,
    now: Instant,
) -> Result<(), Fault> {
    diesel::insert_into(catalogue_versions::table)
        .values((
            catalogue_versions::club_id.eq(club.0),
            catalogue_versions::catalogue_id.eq(id.0),
            catalogue_versions::number.eq(number),
            catalogue_versions::contents.eq(Json(contents.clone())),
            catalogue_versions::created_by.eq(by.0),
            catalogue_versions::created_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// [`Fault::NotFound`], or a fault of the database.
pub async fn find_version(
    mut conn: &Conn,
    club: ClubId,
    id: CatalogueId,
    number: i32,
) -> Result<CatalogueDocument, Fault> {
    let contents: Json<CatalogueDocument> = catalogue_versions::table
        .find((club.0, id.0, number))
        .select(catalogue_versions::contents)
        .first(&mut conn)
        .await?;
    Ok(contents.0)
}
