//! Seasons, their versions and their sealed seeds.

use chrono_tz::Tz;
use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::season::policy::PolicyDocument;
use league::club_role::ClubRole;
use league::ids::{AccountId, CatalogueId, ClubId, SeasonId};
use league::keys::SeasonKey;
use league::season::{SeasonState, Visibility};
use league::time::Instant;
use uuid::Uuid;

use crate::changes::{self, Change, ProcessId};
use crate::clubs::parse_role;
use crate::json::JsonColumn;
use crate::keys::{of_season, season_columns, season_pk};
use crate::number::convert;
use crate::schema::{memberships, season_seeds, seasons};
use crate::{Conn, StoreError};

#[derive(Clone, Debug)]
pub struct Season {
    pub id: SeasonId,
    pub club: ClubId,
    pub name: String,
    /// Who may look.
    pub visibility: Visibility,
    /// The zone of its deadlines.
    pub zone: Tz,
    pub state: SeasonState,
    pub catalogue: CatalogueId,
    pub policy: PolicyDocument,
    /// Most players, if limited.
    pub places: Option<u16>,
    /// Rises whenever a reader may see a difference.
    pub version: i64,
    /// When the version last rose.
    pub changed_at: Instant,
    /// SHA-256 of the seed of its draws; known from the start on.
    pub seed_commitment: Option<Vec<u8>>,
    pub started_at: Option<Instant>,
    pub ended_at: Option<Instant>,
}

impl Season {
    #[must_use]
    pub fn key(&self) -> SeasonKey {
        SeasonKey {
            club: self.club,
            season: self.id,
        }
    }
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = seasons)]
struct SeasonColumns {
    club_id: Uuid,
    season_id: Uuid,
    name: String,
    visibility: String,
    zone: String,
    state: String,
    catalogue_id: Uuid,
    policy: JsonColumn<PolicyDocument>,
    places: Option<i16>,
    version: i64,
    changed_at: Instant,
    seed_commitment: Option<Vec<u8>>,
    started_at: Option<Instant>,
    ended_at: Option<Instant>,
}

impl TryFrom<SeasonColumns> for Season {
    type Error = StoreError;

    fn try_from(row: SeasonColumns) -> Result<Self, StoreError> {
        let zone = row.zone.parse();
        let places = row.places.map(|places| convert("places", places));
        Ok(Self {
            id: SeasonId(row.season_id),
            club: ClubId(row.club_id),
            visibility: parse_visibility(&row.visibility)?,
            zone: zone.map_err(|_| StoreError::Internal(format!("zone {}", row.zone)))?,
            state: parse_state(&row.state)?,
            name: row.name,
            catalogue: CatalogueId(row.catalogue_id),
            policy: row.policy.0,
            places: places.transpose()?,
            version: row.version,
            changed_at: row.changed_at,
            seed_commitment: row.seed_commitment,
            started_at: row.started_at,
            ended_at: row.ended_at,
        })
    }
}

pub(crate) fn parse_visibility(word: &str) -> Result<Visibility, StoreError> {
    match word {
        "public" => Ok(Visibility::Public),
        "club" => Ok(Visibility::Club),
        other => Err(StoreError::Internal(format!("visibility {other}"))),
    }
}

pub(crate) fn parse_state(word: &str) -> Result<SeasonState, StoreError> {
    match word {
        "draft" => Ok(SeasonState::Draft),
        "started" => Ok(SeasonState::Started),
        "ended" => Ok(SeasonState::Ended),
        other => Err(StoreError::Internal(format!("state {other}"))),
    }
}

fn places_to_sql(season: &Season) -> Result<Option<i16>, StoreError> {
    let places = season.places.map(|places| convert("places", places));
    places.transpose()
}

/// Saves a new draft.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(conn: &mut Conn, season: &Season, now: Instant) -> Result<(), StoreError> {
    let places = places_to_sql(season)?;
    diesel::insert_into(seasons::table)
        .values((
            season_columns!(seasons, season.key()),
            seasons::name.eq(&season.name),
            seasons::visibility.eq(season.visibility.as_str()),
            seasons::zone.eq(season.zone.name()),
            seasons::state.eq("draft"),
            seasons::catalogue_id.eq(season.catalogue.0),
            seasons::policy.eq(JsonColumn(season.policy.clone())),
            seasons::places.eq(places),
            seasons::changed_at.eq(now),
            seasons::created_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(conn: &mut Conn, season: SeasonKey) -> Result<Season, StoreError> {
    let row: SeasonColumns = seasons::table
        .find(season_pk(season))
        .select(SeasonColumns::as_select())
        .first(conn)
        .await?;
    row.try_into()
}

/// The season, and the role of an account in its club, if it has one.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find_with_role(
    conn: &mut Conn,
    season: SeasonKey,
    account: AccountId,
) -> Result<(Season, Option<ClubRole>), StoreError> {
    let member = memberships::club_id
        .eq(season.club.0)
        .and(memberships::account_id.eq(account.0));
    let (row, text): (SeasonColumns, Option<String>) = seasons::table
        .left_join(memberships::table.on(member))
        .filter(of_season!(seasons, season))
        .select((SeasonColumns::as_select(), memberships::role.nullable()))
        .first(conn)
        .await?;
    let role = text.map(|text| parse_role(&text)).transpose()?;
    Ok((row.try_into()?, role))
}

/// The rules of a season.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find_policy(mut conn: &Conn, season: SeasonKey) -> Result<PolicyDocument, StoreError> {
    let policy: JsonColumn<PolicyDocument> = seasons::table
        .find(season_pk(season))
        .select(seasons::policy)
        .first(&mut conn)
        .await?;
    Ok(policy.0)
}

/// The season, its row locked until the transaction ends: one change of its public facts at a time.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn lock(conn: &mut Conn, season: SeasonKey) -> Result<Season, StoreError> {
    let row: SeasonColumns = seasons::table
        .find(season_pk(season))
        .select(SeasonColumns::as_select())
        .for_update()
        .first(conn)
        .await?;
    row.try_into()
}

/// The seasons of a club, newest first.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(conn: &mut Conn, club: ClubId) -> Result<Vec<Season>, StoreError> {
    let rows: Vec<SeasonColumns> = seasons::table
        .filter(seasons::club_id.eq(club.0))
        .order((seasons::created_at.desc(), seasons::season_id))
        .select(SeasonColumns::as_select())
        .load(conn)
        .await?;
    rows.into_iter().map(Season::try_from).collect()
}

/// Saves name, visibility, places and rules.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn update(conn: &mut Conn, season: &Season) -> Result<(), StoreError> {
    let places = places_to_sql(season)?;
    diesel::update(seasons::table.find(season_pk(season.key())))
        .set((
            seasons::name.eq(&season.name),
            seasons::visibility.eq(season.visibility.as_str()),
            seasons::policy.eq(JsonColumn(season.policy.clone())),
            seasons::places.eq(places),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// Starts a draft, with the commitment to its seed.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn start(
    conn: &mut Conn,
    season: SeasonKey,
    seed: &[u8],
    commitment: &[u8],
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(season_seeds::table)
        .values((
            season_columns!(season_seeds, season),
            season_seeds::seed.eq(seed),
        ))
        .execute(conn)
        .await?;
    diesel::update(seasons::table.find(season_pk(season)))
        .set((
            seasons::state.eq("started"),
            seasons::started_at.eq(now),
            seasons::seed_commitment.eq(commitment),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// Ends a season; from then on [`find_seed`] may be shown.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn end(conn: &mut Conn, season: SeasonKey, now: Instant) -> Result<(), StoreError> {
    diesel::update(seasons::table.find(season_pk(season)))
        .set((seasons::state.eq("ended"), seasons::ended_at.eq(now)))
        .execute(conn)
        .await?;
    Ok(())
}

/// The secret seed of a season's draws.
///
/// # Errors
/// [`StoreError::NotFound`] before the start.
pub async fn find_seed(conn: &mut Conn, season: SeasonKey) -> Result<Vec<u8>, StoreError> {
    Ok(season_seeds::table
        .find(season_pk(season))
        .select(season_seeds::seed)
        .first(conn)
        .await?)
}

/// Raises the version and notifies every other process of it once the transaction commits.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn raise_version(
    mut conn: &Conn,
    season: SeasonKey,
    now: Instant,
    process: ProcessId,
) -> Result<i64, StoreError> {
    let version: i64 = diesel::update(seasons::table.find(season_pk(season)))
        .set((
            seasons::version.eq(seasons::version + 1),
            seasons::changed_at.eq(now),
        ))
        .returning(seasons::version)
        .get_result(&mut conn)
        .await?;
    changes::notify(conn, Change { season, version }, process).await?;
    Ok(version)
}
