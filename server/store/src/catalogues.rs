//! Catalogues and their numbered versions, which never change.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::catalogue::CatalogueDocument;
use league::ids::{AccountId, CatalogueId, ClubId};
use league::time::Instant;
use uuid::Uuid;

use crate::json::JsonColumn;
use crate::schema::{catalogue_versions, catalogues};
use crate::{Conn, StoreError};

#[derive(Clone, Debug)]
pub struct CatalogueRow {
    pub id: CatalogueId,
    pub name: String,
    /// Its newest version; 0 before the first import.
    pub newest: i32,
}

/// # Errors
/// [`UniqueConstraint::CatalogueName`](crate::UniqueConstraint::CatalogueName), or an error of the database.
pub async fn create(
    conn: &mut Conn,
    club: ClubId,
    catalogue: &CatalogueRow,
    now: Instant,
) -> Result<(), StoreError> {
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
/// A [`StoreError`] of the database.
pub async fn list(conn: &mut Conn, club: ClubId) -> Result<Vec<CatalogueRow>, StoreError> {
    let rows: Vec<(Uuid, String)> = catalogues::table
        .filter(catalogues::club_id.eq(club.0))
        .order(catalogues::name)
        .select((catalogues::catalogue_id, catalogues::name))
        .load(conn)
        .await?;
    let mut found = Vec::with_capacity(rows.len());
    for (id, name) in rows {
        let id = CatalogueId(id);
        found.push(CatalogueRow {
            id,
            name,
            newest: find_newest(conn, club, id).await?,
        });
    }
    Ok(found)
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(
    conn: &mut Conn,
    club: ClubId,
    id: CatalogueId,
) -> Result<CatalogueRow, StoreError> {
    let name = catalogues::table
        .find((club.0, id.0))
        .select(catalogues::name)
        .first(conn)
        .await?;
    Ok(CatalogueRow {
        id,
        name,
        newest: find_newest(conn, club, id).await?,
    })
}

async fn find_newest(conn: &mut Conn, club: ClubId, id: CatalogueId) -> Result<i32, StoreError> {
    let newest: Option<i32> = catalogue_versions::table
        .filter(catalogue_versions::club_id.eq(club.0))
        .filter(catalogue_versions::catalogue_id.eq(id.0))
        .select(diesel::dsl::max(catalogue_versions::number))
        .first(conn)
        .await?;
    // 0 is what a catalogue has before its first import.
    Ok(newest.unwrap_or(0))
}

/// # Errors
/// [`UniqueConstraint::CatalogueVersion`](crate::UniqueConstraint::CatalogueVersion) when another import was faster.
pub async fn create_version(
    conn: &mut Conn,
    club: ClubId,
    id: CatalogueId,
    number: i32,
    contents: &CatalogueDocument,
    by: AccountId,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(catalogue_versions::table)
        .values((
            catalogue_versions::club_id.eq(club.0),
            catalogue_versions::catalogue_id.eq(id.0),
            catalogue_versions::number.eq(number),
            catalogue_versions::contents.eq(JsonColumn(contents.clone())),
            catalogue_versions::created_by.eq(by.0),
            catalogue_versions::created_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find_version(
    mut conn: &Conn,
    club: ClubId,
    id: CatalogueId,
    number: i32,
) -> Result<CatalogueDocument, StoreError> {
    let contents: JsonColumn<CatalogueDocument> = catalogue_versions::table
        .find((club.0, id.0, number))
        .select(catalogue_versions::contents)
        .first(&mut conn)
        .await?;
    Ok(contents.0)
}
