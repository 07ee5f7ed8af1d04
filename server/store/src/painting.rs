//! The painting log: claims of painted models and what became of them.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::painting::rules::ModelStagesDocument;
use futures_util::future::try_join;
use league::ids::{AccountId, ClaimId, PlayerId};
use league::keys::SeasonKey;
use league::lists::EntryKey;
use league::name::Text;
use league::painting::{
    Checker, ClaimState, Evidence, NewClaim, PaintingClaim, PaintingLog, PhotoDigest,
};
use league::time::Instant;
use uuid::Uuid;

use crate::json::JsonColumn;
use crate::keys::{of_season_or_player, pk_in_season, season_pk};
use crate::schema::painting_claims;
use crate::week_no::{week_from_sql, week_to_sql};
use crate::{Conn, StoreError, brought_units};

#[derive(Queryable, Selectable, Insertable)]
#[diesel(table_name = painting_claims)]
struct ClaimColumns {
    club_id: Uuid,
    season_id: Uuid,
    claim_id: Uuid,
    player_id: Uuid,
    week_no: i16,
    unit: String,
    stages: JsonColumn<ModelStagesDocument>,
    photo: Option<Vec<u8>>,
    claimed_at: Instant,
    state: String,
    checker: Option<String>,
    decided_by: Option<Uuid>,
    decided_at: Option<Instant>,
    reason: Option<String>,
}

impl ClaimColumns {
    fn new(season: SeasonKey, claim: &PaintingClaim) -> Self {
        let made = &claim.made;
        let (state, checker, by, at, reason) = match &claim.state {
            ClaimState::Open => ("open", None, None, None, None),
            ClaimState::Verified { checker, by, at } => (
                "verified",
                Some(checker_word(*checker)),
                Some(by.0),
                Some(*at),
                None,
            ),
            ClaimState::Refused { by, reason, at } => (
                "refused",
                None,
                Some(by.0),
                Some(*at),
                Some(reason.as_str().to_owned()),
            ),
        };
        let (club_id, season_id) = season_pk(season);
        Self {
            club_id,
            season_id,
            claim_id: made.id.0,
            player_id: made.player.0,
            week_no: week_to_sql(made.week),
            unit: made.unit.to_string(),
            stages: JsonColumn(made.stages.into()),
            photo: match made.evidence {
                Evidence::AtTable => None,
                Evidence::Photo(digest) => Some(digest.0.to_vec()),
            },
            claimed_at: made.at,
            state: state.to_owned(),
            checker: checker.map(str::to_owned),
            decided_by: by,
            decided_at: at,
            reason,
        }
    }

    fn claim(self) -> Option<PaintingClaim> {
        let evidence = match self.photo {
            None => Evidence::AtTable,
            Some(bytes) => Evidence::Photo(PhotoDigest(bytes.try_into().ok()?)),
        };
        let state = match self.state.as_str() {
            "open" => ClaimState::Open,
            "verified" => ClaimState::Verified {
                checker: CHECKERS
                    .into_iter()
                    .find(|&known| self.checker.as_deref() == Some(checker_word(known)))?,
                by: AccountId(self.decided_by?),
                at: self.decided_at?,
            },
            "refused" => ClaimState::Refused {
                by: AccountId(self.decided_by?),
                reason: Text::new(&self.reason?).ok()?,
                at: self.decided_at?,
            },
            _ => return None,
        };
        Some(PaintingClaim {
            made: NewClaim {
                id: ClaimId(self.claim_id),
                player: PlayerId(self.player_id),
                week: week_from_sql(self.week_no).ok()?,
                unit: EntryKey::new(&self.unit).ok()?,
                stages: self.stages.0.try_into().ok()?,
                evidence,
                at: self.claimed_at,
            },
            state,
        })
    }
}

const CHECKERS: [Checker; 3] = [Checker::Opponent, Checker::Referee, Checker::Photo];

fn checker_word(checker: Checker) -> &'static str {
    match checker {
        Checker::Opponent => "opponent",
        Checker::Referee => "referee",
        Checker::Photo => "photo",
    }
}

fn parse_claim(row: ClaimColumns) -> Result<PaintingClaim, StoreError> {
    let id = row.claim_id;
    row.claim()
        .ok_or_else(|| StoreError::Internal(format!("claim {id} cannot be read")))
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    season: SeasonKey,
    claim: &PaintingClaim,
) -> Result<(), StoreError> {
    let row = ClaimColumns::new(season, claim);
    diesel::insert_into(painting_claims::table)
        .values(row)
        .execute(conn)
        .await?;
    Ok(())
}

/// The claims of a season, or of one player, in the order in which they were made.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(
    mut conn: &Conn,
    season: SeasonKey,
    player: Option<PlayerId>,
) -> Result<Vec<PaintingClaim>, StoreError> {
    let rows: Vec<ClaimColumns> = of_season_or_player!(painting_claims, season, player)
        .order((painting_claims::claimed_at, painting_claims::claim_id))
        .select(ClaimColumns::as_select())
        .load(&mut conn)
        .await?;
    rows.into_iter().map(parse_claim).collect()
}

/// The whole log of a season, or of one player.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find_log(
    conn: &Conn,
    season: SeasonKey,
    player: Option<PlayerId>,
) -> Result<PaintingLog, StoreError> {
    let brought = brought_units::list(conn, season, player);
    let claims = list(conn, season, player);
    let (brought, claims) = try_join(brought, claims).await?;
    Ok(PaintingLog { brought, claims })
}

/// The claim, its row locked until the transaction ends.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn lock(
    conn: &mut Conn,
    season: SeasonKey,
    id: ClaimId,
) -> Result<PaintingClaim, StoreError> {
    let row: ClaimColumns = painting_claims::table
        .find(pk_in_season(season, id.0))
        .select(ClaimColumns::as_select())
        .for_update()
        .first(conn)
        .await?;
    parse_claim(row)
}

/// Saves what was decided of a claim.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn update(
    conn: &mut Conn,
    season: SeasonKey,
    claim: &PaintingClaim,
) -> Result<(), StoreError> {
    let row = ClaimColumns::new(season, claim);
    diesel::update(painting_claims::table.find(pk_in_season(season, row.claim_id)))
        .set((
            painting_claims::state.eq(row.state),
            painting_claims::checker.eq(row.checker),
            painting_claims::decided_by.eq(row.decided_by),
            painting_claims::decided_at.eq(row.decided_at),
            painting_claims::reason.eq(row.reason),
        ))
        .execute(conn)
        .await?;
    Ok(())
}
