//! The games and byes of published rounds, each with its slip.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::results::SlipDocument;
use league::ids::{GameId, PlayerId, RoundId};
use league::keys::{GameKey, SeasonKey};
use league::result::Slip;
use league::time::Instant;
use league::week::WeekNo;
use uuid::Uuid;

use crate::json::JsonColumn;
use crate::keys::{game_pk, of_season, season_columns, season_from_pk, week_columns};
use crate::number::convert;
use crate::schema::{games, slips};
use crate::week_no::{week_from_sql, week_to_sql};
use crate::{Conn, StoreError};

/// A game or bye.
#[derive(Clone, Debug)]
pub struct GameRow {
    pub id: GameId,
    pub round: RoundId,
    pub week: WeekNo,
    /// Which of the week's rounds.
    pub round_no: u8,
    /// The player who sits out, or the first of two: the attacker where the scenario has roles.
    pub first: PlayerId,
    /// Opponent, night and table; none for a bye.
    pub meeting: Option<MeetingRow>,
    pub slip: Slip,
    /// Version of the result.
    pub version: u32,
}

/// The second half of a game of two.
#[derive(Clone, Debug)]
pub struct MeetingRow {
    pub second: PlayerId,
    /// Short name of the night.
    pub night: String,
    pub table: u16,
}

impl GameRow {
    /// Whether the player is in this game, or sits out by it.
    pub fn involves(&self, player: PlayerId) -> bool {
        let second = self.meeting.as_ref().map(|meeting| meeting.second);
        self.first == player || second == Some(player)
    }
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = games)]
struct GameColumns {
    game_id: Uuid,
    round_id: Uuid,
    week_no: i16,
    round_no: i16,
    first: Uuid,
    second: Option<Uuid>,
    night: Option<String>,
    table_no: Option<i16>,
}

type SlipColumns = Option<(JsonColumn<SlipDocument>, i32)>;

fn game((row, slip): (GameColumns, SlipColumns)) -> Result<GameRow, StoreError> {
    let broken = |what: String| StoreError::Internal(format!("game {}: {what}", row.game_id));
    let (slip, version) = match slip {
        None => (Slip::Awaited, 1),
        Some((document, version)) => (
            Slip::try_from(document.0).map_err(|faults| broken(format!("{faults:?}")))?,
            version,
        ),
    };
    let meeting = match (row.second, row.night, row.table_no) {
        (Some(second), Some(night), Some(table)) => Some(MeetingRow {
            second: PlayerId(second),
            night,
            table: convert("a table", table)?,
        }),
        (None, None, None) => None,
        _ => return Err(broken("a half of a meeting".to_owned())),
    };
    Ok(GameRow {
        id: GameId(row.game_id),
        round: RoundId(row.round_id),
        week: week_from_sql(row.week_no)?,
        round_no: convert("a round of a week", row.round_no)?,
        first: PlayerId(row.first),
        meeting,
        slip,
        version: convert("the version of a result", version)?,
    })
}

/// Saves the games of a round that is being published.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    season: SeasonKey,
    games: &[GameRow],
) -> Result<(), StoreError> {
    let row = |game: &GameRow| {
        let meeting = game.meeting.as_ref();
        let table = meeting.map(|meeting| convert::<_, i16>("a table", meeting.table));
        Ok((
            week_columns!(games, season.week(game.week)),
            games::game_id.eq(game.id.0),
            games::round_id.eq(game.round.0),
            games::round_no.eq(i16::from(game.round_no)),
            games::first.eq(game.first.0),
            games::second.eq(meeting.map(|meeting| meeting.second.0)),
            games::night.eq(meeting.map(|meeting| meeting.night.clone())),
            games::table_no.eq(table.transpose()?),
        ))
    };
    let rows: Vec<_> = games.iter().map(row).collect::<Result<_, StoreError>>()?;
    diesel::insert_into(games::table)
        .values(rows)
        .execute(conn)
        .await?;
    Ok(())
}

/// The games of a season, or of one week of it: by week, round, table, with byes last.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(
    mut conn: &Conn,
    season: SeasonKey,
    week: Option<WeekNo>,
) -> Result<Vec<GameRow>, StoreError> {
    let mut query = games::table
        .left_join(
            slips::table.on(slips::club_id
                .eq(games::club_id)
                .and(slips::season_id.eq(games::season_id))
                .and(slips::game_id.eq(games::game_id))),
        )
        .filter(of_season!(games, season))
        .into_boxed();
    if let Some(week) = week {
        query = query.filter(games::week_no.eq(week_to_sql(week)));
    }
    let rows: Vec<(GameColumns, SlipColumns)> = query
        .order((
            games::week_no,
            games::round_no,
            games::night.asc().nulls_last(),
            games::table_no.asc().nulls_last(),
            games::game_id,
        ))
        .select((
            GameColumns::as_select(),
            (slips::contents, slips::version).nullable(),
        ))
        .load(&mut conn)
        .await?;
    rows.into_iter().map(game).collect()
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(conn: &mut Conn, key: GameKey) -> Result<GameRow, StoreError> {
    let row: GameColumns = games::table
        .find(game_pk(key))
        .select(GameColumns::as_select())
        .first(conn)
        .await?;
    let slip: SlipColumns = slips::table
        .find(game_pk(key))
        .select((slips::contents, slips::version))
        .first(conn)
        .await
        .optional()?;
    game((row, slip))
}

/// The game with its slip's row locked until the transaction ends: of two reports at once one is the
/// first, and the other finds it.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn lock(conn: &mut Conn, key: GameKey) -> Result<GameRow, StoreError> {
    // Locked, so that a repair cannot delete the game before its slip has a row.
    let row: GameColumns = games::table
        .find(game_pk(key))
        .select(GameColumns::as_select())
        .for_key_share()
        .first(conn)
        .await?;
    diesel::insert_into(slips::table)
        .values((
            season_columns!(slips, key.season),
            slips::game_id.eq(key.game.0),
            slips::contents.eq(JsonColumn(SlipDocument::Awaited)),
            slips::state.eq("awaited"),
        ))
        .on_conflict_do_nothing()
        .execute(conn)
        .await?;
    let slip: (JsonColumn<SlipDocument>, i32) = slips::table
        .find(game_pk(key))
        .select((slips::contents, slips::version))
        .for_update()
        .first(conn)
        .await?;
    game((row, Some(slip)))
}

/// Saves what became of a slip.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn update_slip(
    conn: &mut Conn,
    season: SeasonKey,
    game: &GameRow,
) -> Result<(), StoreError> {
    let version: i32 = convert("the version of a result", game.version)?;
    let (state, confirm_due) = match &game.slip {
        Slip::Awaited => ("awaited", None),
        Slip::Reported { confirm_due, .. } => ("reported", Some(*confirm_due)),
        Slip::Disputed { .. } => ("disputed", None),
        Slip::Confirmed { .. } => ("confirmed", None),
        Slip::Ruled(_) => ("ruled", None),
    };
    diesel::update(slips::table.find(game_pk(season.game(game.id))))
        .set((
            slips::contents.eq(JsonColumn(SlipDocument::from(&game.slip))),
            slips::state.eq(state),
            slips::version.eq(version),
            slips::confirm_due_at.eq(confirm_due),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// Games whose reported result silence has confirmed by `now`.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_confirmed_by_silence(
    conn: &mut Conn,
    now: Instant,
) -> Result<Vec<GameKey>, StoreError> {
    let rows: Vec<(Uuid, Uuid, Uuid)> = slips::table
        .filter(
            slips::state
                .eq("reported")
                .and(slips::confirm_due_at.le(now)),
        )
        .order(slips::confirm_due_at)
        .select((slips::club_id, slips::season_id, slips::game_id))
        .load(conn)
        .await?;
    Ok(rows
        .into_iter()
        .map(|(club, season, game)| season_from_pk((club, season)).game(GameId(game)))
        .collect())
}
