//! The public export of a season: everything that everybody may know now.

use league::keys::SeasonKey;
use std::collections::BTreeSet;

use document::export::{
    FORMAT, GameRecordDocument, ListRecordDocument, PlayerRecordDocument, RoundRecordDocument,
    SeasonExportDocument, WeekRecordDocument,
};
use document::lists::receipt::SealedList as ReceiptInput;
use document::painting::brought::BroughtUnitDocument;
use document::painting::claim::ClaimDocument;
use document::results::SlipDocument;
use document::table::standings::StandingsDocument;
use league::painting::{PaintingClaim, PaintingLog};
use league::season::SeasonState;
use league::standings::{awards, table};
use league::time::Instant;
use store::Conn;
use store::games::GameRow;
use store::lists::PlayerList;
use store::players::{LeftAfter, Player};
use store::rounds::RoundRow;
use store::weeks::Week;

use super::visible_scenario::{VisibleScenario, visible_scenario};
use crate::access::{SeasonView, view_season};
use crate::lists::{is_list_open, list_opened_lists};
use crate::load_season::load_season;
use crate::loaded_season::LoadedSeason;
use crate::{App, Refusal, Viewer};

/// # Errors
/// [`Refusal::NotFound`].
pub async fn export_season(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<SeasonExportDocument, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, season).await?;
            // What only those who run the season may see has no place in a public file.
            let public = SeasonView { role: None, ..view };
            let now = store::clock::now(conn).await?;
            let loaded = load_season(conn, app, &public.season, now).await?;
            let mut weeks = Vec::with_capacity(loaded.weeks.len());
            for week in &loaded.weeks {
                weeks.push(week_record(conn, &public, week, &loaded.games, now).await?);
            }
            let as_of = loaded.last_paired_week();
            let log = store::painting::find_log(conn, season, None).await?;
            let season = &public.season;
            let seed = match season.state {
                SeasonState::Ended => Some(store::seasons::find_seed(conn, season.key()).await?),
                SeasonState::Draft | SeasonState::Started => None,
            };
            Ok(SeasonExportDocument {
                format: FORMAT,
                season: season.id.0,
                name: season.name.clone(),
                zone: season.zone.name().to_owned(),
                version: season.version,
                seed_commitment: season.seed_commitment.as_deref().map(hex::encode),
                seed: seed.as_deref().map(hex::encode),
                policy: season.policy.clone(),
                players: loaded
                    .players
                    .iter()
                    .map(|known| player(known, &log, &weeks))
                    .collect(),
                painting: claims(&log, &loaded),
                awards: awards(&loaded.facts, as_of)
                    .iter()
                    .map(Into::into)
                    .collect(),
                weeks,
                standings: StandingsDocument::from(&table(&loaded.facts, as_of)),
            })
        })
        .await
}

async fn week_record(
    conn: &mut Conn,
    view: &SeasonView,
    week: &Week,
    games: &[GameRow],
    now: Instant,
) -> Result<WeekRecordDocument, Refusal> {
    let key = view.season.key();
    let lists = match week.facts.lists_opened_at {
        Some(at) => list_opened_lists(conn, key.week(week.week), at).await?,
        None => Vec::new(),
    };
    let rounds = store::rounds::list(conn, key, Some(week.week)).await?;
    Ok(WeekRecordDocument {
        week: week.week.number(),
        cap: week.cap.get(),
        lists_due: week.lists_due.0,
        scenario: match visible_scenario(view, week, now) {
            Some(VisibleScenario::Full(sheet)) => Some(*sheet),
            _ => None,
        },
        lists: lists
            .into_iter()
            .filter_map(|it| list(it).transpose())
            .collect::<Result<_, _>>()?,
        rounds: rounds.into_iter().filter_map(round).collect(),
        games: games
            .iter()
            .filter(|game| game.week == week.week)
            .map(game)
            .collect(),
    })
}

/// A claim names a unit, and so tells of a list.
fn claims(log: &PaintingLog, loaded: &LoadedSeason) -> Vec<ClaimDocument> {
    let is_told = |claim: &&PaintingClaim| {
        let slot = (claim.made.week, claim.made.player);
        is_list_open(&loaded.weeks, &loaded.players, slot)
    };
    let open = log.claims.iter().filter(is_told);
    open.map(ClaimDocument::from).collect()
}

/// Only what an opened list shows: the rest is the player's own business.
fn brought(
    player: &Player,
    log: &PaintingLog,
    weeks: &[WeekRecordDocument],
) -> Vec<BroughtUnitDocument> {
    let lists = weeks.iter().flat_map(|week| &week.lists);
    let own = lists.filter(|list| list.player == player.id.0);
    let fielded: BTreeSet<&str> = own
        .flat_map(|list| &list.contents.list.entries)
        .map(|entry| entry.key.as_str())
        .collect();
    let brought = log
        .brought
        .iter()
        .filter(|unit| unit.player == player.id && fielded.contains(unit.entry.as_str()));
    brought.map(BroughtUnitDocument::from).collect()
}

fn player(
    player: &Player,
    log: &PaintingLog,
    weeks: &[WeekRecordDocument],
) -> PlayerRecordDocument {
    PlayerRecordDocument {
        id: player.id.0,
        handle: player.handle.clone(),
        faction: player.faction.clone(),
        joined_week: player.joined_week.number(),
        left_after_week: player.left_after.map(|left| match left {
            LeftAfter::NoWeek => 0,
            LeftAfter::Week(last) => last.number(),
        }),
        brought: brought(player, log, weeks),
        seat: player.seat,
    }
}

fn list(list: PlayerList) -> Result<Option<ListRecordDocument>, Refusal> {
    let Some(sealed) = list.sealed else {
        return Ok(None);
    };
    let salt = String::from_utf8(sealed.salt)
        .map_err(|_| Refusal::Internal(format!("the salt of list {}", list.id)))?;
    Ok(Some(ListRecordDocument {
        player: list.player.0,
        contents: ReceiptInput {
            list: sealed.list,
            list_id: list.id.to_string(),
            salt,
        },
        receipt: hex::encode(sealed.digest),
        sealed_at: sealed.sealed_at,
        late_minutes: sealed.late_minutes,
        stands_in: sealed.stands_in,
    }))
}

fn round(round: RoundRow) -> Option<RoundRecordDocument> {
    Some(RoundRecordDocument {
        round: round.id.0,
        number: round.number,
        version: round.version,
        repair: round.repair,
        inputs: round.task,
        draw: hex::encode(round.draw),
        proposal: round.proposal,
        published_at: round.published_at?,
    })
}

fn game(game: &GameRow) -> GameRecordDocument {
    let meeting = game.meeting.as_ref();
    GameRecordDocument {
        game: game.id.0,
        round: game.round.0,
        first: game.first.0,
        second: meeting.map(|meeting| meeting.second.0),
        night: meeting.map(|meeting| meeting.night.clone()),
        table: meeting.map(|meeting| meeting.table),
        slip: SlipDocument::from(&game.slip),
        version: game.version,
    }
}
