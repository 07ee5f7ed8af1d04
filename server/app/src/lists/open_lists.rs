//! Opening all lists of a week at once, when the deadline and its grace are over.

use document::list::ArmyListDocument;
use document::receipt::SealedList as ReceiptInput;
use league::ids::{ClubId, SeasonId};
use league::lists::ArmyList;
use league::season::Arrival;
use league::time::Instant;
use league::week::WeekNo;
use serde_json::{Value, json};
use store::Conn;
use store::lists::{PlayerList, SealedList};
use store::players::Player;
use store::seasons::Season;
use store::weeks::Week;

use super::seal_list::sealed;
use super::terms::WeekTerms;
use crate::may::may;
use crate::record::Scene;
use crate::seasons::look::must_be_started;
use crate::{Action, Actor, Desk, Reason, Refusal, secret};

/// Opens every week whose time has come; the server asks for it every second or so.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn open_due_lists(desk: &Desk) -> Result<usize, Refusal> {
    let due = desk
        .store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            store::weeks::list_due(conn, now).await
        })
        .await?;
    for &(club, season, week) in &due {
        open(desk, None, club, season, week).await?;
    }
    Ok(due.len())
}

/// Opens a week's lists now that their deadline is over; does nothing when they are open.
///
/// # Errors
/// [`Reason::DeadlineAhead`] before that instant, whoever asks.
pub async fn open_lists(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<(), Refusal> {
    open(desk, Some(actor), club, season, week).await
}

async fn open(
    desk: &Desk,
    actor: Option<Actor>,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<(), Refusal> {
    desk.store
        .write(async |conn| {
            if let Some(actor) = actor {
                may(conn, actor, club, Action::RunSeason).await?;
            }
            let season = store::seasons::lock(conn, club, season).await?;
            must_be_started(&season)?;
            let week = store::weeks::lock(conn, club, season.id, week).await?;
            let now = store::clock::now(conn).await?;
            if week.facts.lists_opened_at.is_some() {
                return Ok(());
            }
            if now < week.facts.accepted_until() {
                let detail = "The lists are opened when the deadline and its grace are over.";
                return Err(Refusal::rule(Reason::DeadlineAhead, detail)
                    .fact("deadline", week.facts.accepted_until().to_rfc3339()));
            }
            put_in_stand_ins(conn, &season, &week, now).await?;
            store::weeks::mark_opened(conn, club, season.id, week.week, now).await?;
            let receipts = receipts(conn, &season, week.week).await?;
            let scene = match actor {
                Some(actor) => Scene::in_season(&season, actor, now),
                None => Scene::by_clock(club, season.id, now),
            };
            scene
                .tell_everyone(
                    conn,
                    "open_lists",
                    json!({"week": week.week.number(), "receipts": receipts}),
                )
                .await
        })
        .await
}

/// Where no list came, the last one stands in if it is legal this week (common practice, no source).
async fn put_in_stand_ins(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    now: Instant,
) -> Result<(), Refusal> {
    let players = store::players::list(conn, season.club, season.id).await?;
    for player in players.iter().filter(|player| player.plays_in(week.week)) {
        let (club, id) = (season.club, season.id);
        let slot = store::lists::lock(conn, club, id, week.week, player.id).await?;
        if slot.sealed.is_none()
            && let Some(list) = stand_in(conn, season, week, player, &slot, now).await?
        {
            store::lists::seal(conn, club, id, &slot, &list).await?;
        }
    }
    Ok(())
}

async fn stand_in(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    player: &Player,
    slot: &PlayerList,
    now: Instant,
) -> Result<Option<SealedList>, Refusal> {
    let (club, id) = (season.club, season.id);
    let earlier = store::lists::list_sealed_before(conn, club, id, week.week, player.id).await?;
    let Some(last) = earlier.into_iter().next_back().and_then(|last| last.sealed) else {
        return Ok(None);
    };
    let Ok(list) = ArmyList::try_from(last.list) else {
        return Ok(None);
    };
    let report = WeekTerms::load(conn, season, week, player)
        .await?
        .check(&list);
    if !report.accepted() {
        return Ok(None);
    }
    let contents = ReceiptInput {
        list: ArmyListDocument::from(&list),
        list_id: slot.id.to_string(),
        salt: secret::draw_text()?,
    };
    let points = report.total.get();
    let list = sealed(
        &contents,
        points,
        week.catalogue_number,
        now,
        Arrival::OnTime,
    )?;
    Ok(Some(SealedList {
        stands_in: true,
        ..list
    }))
}

async fn receipts(conn: &mut Conn, season: &Season, week: WeekNo) -> Result<Vec<Value>, Refusal> {
    let lists = store::lists::list_of_week(conn, season.club, season.id, week).await?;
    let receipt = |list: PlayerList| {
        let sealed = list.sealed?;
        Some(json!({
            "player": list.player.0,
            "receipt": document::hex(&sealed.digest),
            "sealed_at": sealed.sealed_at,
            "stands_in": sealed.stands_in,
        }))
    };
    Ok(lists.into_iter().filter_map(receipt).collect())
}
