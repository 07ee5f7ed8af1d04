//! Opening all lists of a week at once after its deadline and grace: by the scheduler or by an organiser.

use document::lists::army_list::ArmyListDocument;
use document::lists::receipt::SealedList as ReceiptInput;
use document::trail::{OpenedReceipt, TrailAct};
use league::keys::WeekKey;
use league::lists::ArmyList;
use league::points::Points;
use league::season::ListArrival;
use league::time::Instant;
use league::week::WeekNo;
use messages::army_lists;
use store::Conn;
use store::lists::{ListIdentity, PlayerList, SealedListRow};
use store::players::Player;
use store::seasons::Season;
use store::week_limits::WeekLimits;

use super::opened::list_opened_lists;
use super::seal_list::build_sealed_list;
use super::terms::WeekTerms;
use crate::access::{RunningSeason, authorize};
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal, secret};

/// Opens every week whose time has come; the scheduler of the server calls it every second or so.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn open_due_lists(app: &App) -> Result<usize, Refusal> {
    let due = app
        .store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            store::weeks::list_due(conn, now).await
        })
        .await?;
    for &week in &due {
        open(app, None, week).await?;
    }
    Ok(due.len())
}

/// Opens a week's lists now that their deadline is over, but for those of whoever has withdrawn; does
/// nothing when they are open.
///
/// # Errors
/// [`Reason::DeadlineAhead`] before that instant, whoever asks; everybody can read in the trail who
/// did: organisers may play, too.
pub async fn open_lists(app: &App, actor: Actor, week: WeekKey) -> Result<(), Refusal> {
    let done = open(app, Some(actor), week).await;
    if let Err(Refusal::Rule {
        reason: Reason::DeadlineAhead,
        ..
    }) = done
    {
        record_early_attempt(app, actor, week).await?;
    }
    done
}

/// In a transaction of its own: the refused one leaves nothing behind.
async fn record_early_attempt(app: &App, actor: Actor, week: WeekKey) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        let season = store::seasons::lock(&mut tx, week.season).await?;
        let now = store::clock::now(&tx).await?;
        let act = TrailAct::OpenListsTooEarly {
            week: week.week.number(),
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.with(()))
    })
    .await
}

async fn open(app: &App, actor: Option<Actor>, week: WeekKey) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        if let Some(actor) = actor {
            authorize(&mut tx, actor, week.season.club, Action::RunSeason).await?;
        }
        let season = store::seasons::lock(&mut tx, week.season).await?;
        let running = RunningSeason::from_season(&season)?;
        let week = store::weeks::lock(&mut tx, week).await?;
        let now = store::clock::now(&tx).await?;
        if week.facts.lists_opened_at.is_some() {
            return Ok(tx.commit(()));
        }
        if !week.facts.lists_are_due(now) {
            let message = army_lists::lists_not_open_yet();
            return Err(Refusal::rule(Reason::DeadlineAhead, message)
                .fact("deadline", week.facts.accepted_until().to_rfc3339()));
        }
        put_in_stand_ins(app, &mut tx, running, week.limits(), now).await?;
        store::weeks::mark_opened(&mut tx, season.key().week(week.week), now).await?;
        let receipts = receipts(&mut tx, &season, week.week, now).await?;
        let act = TrailAct::OpenLists {
            week: week.week.number(),
            receipts,
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.with(()))
    })
    .await
}

/// Where no list came, the last one stands in if it is legal this week (common practice, no source).
async fn put_in_stand_ins(
    app: &App,
    conn: &mut Conn,
    season: RunningSeason,
    week: WeekLimits,
    now: Instant,
) -> Result<(), Refusal> {
    let key = season.key;
    let begun = store::lists::list_by_week(conn, key.week(week.week)).await?;
    let begun_by = |player| begun.iter().find(|list| list.player == player);
    let is_sealed = |player| begun_by(player).is_some_and(|list| list.sealed.is_some());
    let players = store::players::list(conn, key).await?;
    let without = players
        .iter()
        .filter(|player| player.plays_in(week.week) && !is_sealed(player.id));
    for player in without {
        let Some((list, points)) = last_list_if_legal(app, conn, season, week, player).await?
        else {
            continue;
        };
        let identity = ListIdentity::from(begun_by(player.id).map(|list| list.id));
        let contents = ReceiptInput {
            list: ArmyListDocument::from(&list),
            list_id: identity.id().to_string(),
            salt: secret::random_hex()?,
        };
        let number = week.catalogue_number;
        let list = build_sealed_list(&contents, points.get(), number, now, ListArrival::OnTime)?;
        let list = SealedListRow {
            stands_in: true,
            ..list
        };
        if !store::lists::seal(conn, key.week(week.week), player.id, identity, &list).await? {
            let cause = "a list was begun while its week was locked";
            return Err(Refusal::Internal(cause.to_owned()));
        }
    }
    Ok(())
}

async fn last_list_if_legal(
    app: &App,
    conn: &mut Conn,
    season: RunningSeason,
    week: WeekLimits,
    player: &Player,
) -> Result<Option<(ArmyList, Points)>, Refusal> {
    let key = season.key;
    let last = store::lists::find_last_sealed(conn, key.week(week.week), player.id).await?;
    let Some(last) = last.and_then(|last| last.sealed) else {
        return Ok(None);
    };
    let list = ArmyList::try_from(last.list)
        .map_err(|faults| Refusal::Internal(format!("a sealed list: {faults:?}")))?;
    let terms = WeekTerms::load(app, conn, season, week, player).await?;
    let report = terms.check(&list);
    Ok(report.is_accepted().then_some((list, report.total)))
}

async fn receipts(
    conn: &mut Conn,
    season: &Season,
    week: WeekNo,
    now: Instant,
) -> Result<Vec<OpenedReceipt>, Refusal> {
    let lists = list_opened_lists(conn, season.key().week(week), now).await?;
    let receipt = |list: PlayerList| {
        let sealed = list.sealed?;
        Some(OpenedReceipt {
            player: list.player.0,
            receipt: hex::encode(sealed.digest),
            sealed_at: sealed.sealed_at,
            stands_in: sealed.stands_in,
        })
    };
    Ok(lists.into_iter().filter_map(receipt).collect())
}
