//! Opening all lists of a week at once, when the deadline and its grace are over.

use document::list::ArmyListDocument;
use document::receipt::SealedList as ReceiptInput;
use league::ids::{ClubId, SeasonId};
use league::lists::ArmyList;
use league::points::Points;
use league::season::Arrival;
use league::time::Instant;
use league::week::WeekNo;
use serde_json::{Value, json};
use store::Conn;
use store::bounds::Bounds;
use store::lists::{Identity, PlayerList, SealedList};
use store::players::Player;
use store::seasons::Season;

use super::opened::list_opened;
use super::seal_list::sealed;
use super::terms::WeekTerms;
use crate::may::may;
use crate::record::Scene;
use crate::seasons::look::Running;
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

/// Opens a week's lists now that their deadline is over, but for those of whoever has withdrawn; does
/// nothing when they are open.
///
/// # Errors
/// [`Reason::DeadlineAhead`] before that instant, whoever asks; everybody can read in the trail who
/// did: organisers may play, too.
pub async fn open_lists(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<(), Refusal> {
    let done = open(desk, Some(actor), club, season, week).await;
    if let Err(Refusal::Rule {
        reason: Reason::DeadlineAhead,
        ..
    }) = done
    {
        tell_of_attempt(desk, actor, club, season, week).await?;
    }
    done
}

/// In a transaction of its own: the refused one leaves nothing behind.
async fn tell_of_attempt(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<(), Refusal> {
    desk.store
        .write(async |conn| {
            let season = store::seasons::lock(conn, club, season).await?;
            let now = store::clock::now(conn).await?;
            let facts = json!({"week": week.number()});
            Scene::in_season(season.key(), actor, now)
                .tell_everyone(desk, conn, "open_lists_too_early", facts)
                .await
        })
        .await
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
            let running = Running::of(&season)?;
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
            put_in_stand_ins(desk, conn, running, week.bounds(), now).await?;
            store::weeks::mark_opened(conn, club, season.id, week.week, now).await?;
            let receipts = receipts(conn, &season, week.week, now).await?;
            let scene = match actor {
                Some(actor) => Scene::in_season(season.key(), actor, now),
                None => Scene::by_clock(club, season.id, now),
            };
            scene
                .tell_everyone(
                    desk,
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
    desk: &Desk,
    conn: &mut Conn,
    season: Running,
    week: Bounds,
    now: Instant,
) -> Result<(), Refusal> {
    let (club, id) = (season.club, season.id);
    let begun = store::lists::list_of_week(conn, club, id, week.week).await?;
    let of = |player| begun.iter().find(|list| list.player == player);
    let came = |player| of(player).is_some_and(|list| list.sealed.is_some());
    let players = store::players::list(conn, club, id).await?;
    let without = players
        .iter()
        .filter(|player| player.plays_in(week.week) && !came(player.id));
    for player in without {
        let Some((list, points)) = last_list_if_legal(desk, conn, season, week, player).await?
        else {
            continue;
        };
        let slot = (week.week, player.id);
        let identity = Identity::from(of(player.id).map(|list| list.id));
        let contents = ReceiptInput {
            list: ArmyListDocument::from(&list),
            list_id: identity.id().to_string(),
            salt: secret::draw_text()?,
        };
        let number = week.catalogue_number;
        let list = sealed(&contents, points.get(), number, now, Arrival::OnTime)?;
        let list = SealedList {
            stands_in: true,
            ..list
        };
        if !store::lists::seal(conn, club, id, slot, identity, &list).await? {
            let cause = "a list was begun while its week was locked";
            return Err(Refusal::Broken(cause.to_owned()));
        }
    }
    Ok(())
}

async fn last_list_if_legal(
    desk: &Desk,
    conn: &mut Conn,
    season: Running,
    week: Bounds,
    player: &Player,
) -> Result<Option<(ArmyList, Points)>, Refusal> {
    let (club, id) = (season.club, season.id);
    let last = store::lists::find_last_sealed(conn, club, id, week.week, player.id).await?;
    let last = last.and_then(|last| last.sealed);
    let Some(list) = last.and_then(|last| ArmyList::try_from(last.list).ok()) else {
        return Ok(None);
    };
    let terms = WeekTerms::load(desk, conn, season, week, player).await?;
    let report = terms.check(&list);
    Ok(report.accepted().then_some((list, report.total)))
}

async fn receipts(
    conn: &mut Conn,
    season: &Season,
    week: WeekNo,
    now: Instant,
) -> Result<Vec<Value>, Refusal> {
    let lists = list_opened(conn, season.club, season.id, week, now).await?;
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
