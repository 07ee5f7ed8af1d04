//! Sealing a list: checked, judged by the league's clock under the lock of its week, and answered with
//! a receipt.

use document::lists::army_list::ArmyListDocument;
use document::lists::receipt::SealedList as ReceiptInput;
use document::trail::TrailAct;
use futures_util::future::{join, join4};
use league::ids::{AccountId, ListId, PlayerId};
use league::keys::WeekKey;
use league::lists::{ArmyList, CheckReport};
use league::season::{ListArrival, ListNotAccepted, accept_list};
use league::time::Instant;
use messages::{army_lists, seasons};
use store::Conn;
use store::lists::{ListIdentity, SealedListRow};
use store::week_limits::WeekLimits;

use super::terms::{WeekTerms, must_be_legal, parse_list};
use crate::access::{RunningSeason, authorize_player, must_play};
use crate::accounts::UnverifiedSession;
use crate::season_change::SeasonChange;
use crate::transaction::{Committed, Tx};
use crate::{Actor, App, Reason, Refusal, secret};

/// The proof of what was sealed.
#[derive(Clone, Debug)]
pub struct Receipt {
    pub list: ListId,
    /// What was sealed, with the salt: the input of the digest.
    pub contents: ReceiptInput,
    /// SHA-256 of the canonical JSON of `contents`, in hexadecimal.
    pub digest: String,
    pub sealed_at: Instant,
    /// How it came in.
    pub arrival: ListArrival,
    /// What the check said: remarks at most.
    pub report: CheckReport,
}

/// Seals `list` for the week, in the place of any sealed before in time.
///
/// Nothing about it reaches the trail before the lists are opened: even when somebody handed in is
/// nobody's business until then.
///
/// # Errors
/// [`Reason::InvalidToken`]; [`Reason::DeadlinePassed`], [`Reason::ListLocked`] for whoever has leave and
/// a list, and once a round is drawn from the lists; [`Reason::PointsCapExceeded`] or
/// [`Reason::ListBreaksRules`] with every breach. Then nothing is written.
pub async fn seal_list(
    app: &App,
    who: impl Into<UnverifiedSession>,
    week: WeekKey,
    list: ArmyListDocument,
) -> Result<Receipt, Refusal> {
    let list = parse_list(list)?;
    let who = who.into();
    let account = who.claimed_account();
    let preread = async |conn: &Conn| {
        let player = authorize_player(conn, account, week.season);
        let limits = store::week_limits::lock_shared(conn, week);
        let turn = Turn::take(conn, week, account);
        // Authentication is judged first: without it no other error may be told.
        let (actor, player, limits, turn) = join4(who.verify(conn), player, limits, turn).await;
        Ok((actor?, player?, limits?, turn?))
    };
    app.write_after(
        preread,
        async |mut tx, (actor, (season, player), limits, turn)| {
            must_play(&player, limits.week)?;
            let terms = WeekTerms::load(app, &tx, season, limits, &player).await?;
            let mut submission = Submission {
                actor,
                season,
                week: limits,
                player: player.id,
                list: &list,
                report: terms.check(&list),
                turn,
            };
            loop {
                if let Some(receipt) = submission.seal(&mut tx).await? {
                    return submission.finish(tx, receipt).await;
                }
                submission.turn = Turn::take(&tx, week, account).await?;
            }
        },
    )
    .await
}

/// One of several lists that a player may send at once: they are sealed one after the other.
#[derive(Clone, Copy, Debug)]
struct Turn {
    /// The list that was begun, its row locked.
    existing: Option<ListId>,
    /// The instant by which this list is judged.
    now: Instant,
}

impl Turn {
    /// Waits for those before. The clock is read last, under the locks of week and list: whoever waited across
    /// the deadline is late, and of several receipts that of the list which stands has the latest instant.
    /// Should the clock have been put back meanwhile, the instant is that of the list before.
    async fn take(conn: &Conn, week: WeekKey, account: AccountId) -> Result<Self, Refusal> {
        let begun = store::lists::lock_begun(conn, week, account);
        let (begun, now) = join(begun, store::clock::now(conn)).await;
        let (begun, now) = (begun?, now?);
        let before = begun.and_then(|begun| begun.sealed_at);
        Ok(Self {
            existing: begun.map(|begun| begun.id),
            now: before.map_or(now, |before| before.max(now)),
        })
    }
}

/// A checked list that is being sealed under the lock of its week.
struct Submission<'a> {
    actor: Actor,
    season: RunningSeason,
    week: WeekLimits,
    player: PlayerId,
    list: &'a ArmyList,
    report: CheckReport,
    turn: Turn,
}

impl Submission<'_> {
    /// `None` when the player began a list of this week in another transaction at the same moment; then
    /// it exists and can be sealed.
    async fn seal(&self, conn: &mut Conn) -> Result<Option<Receipt>, Refusal> {
        let week = self.season.key.week(self.week.week);
        let now = self.turn.now;
        let (arrival, existing) = self.arrival(conn).await?;
        must_be_legal(self.list, &self.report)?;
        let identity = ListIdentity::from(existing);
        let contents = ReceiptInput {
            list: ArmyListDocument::from(self.list),
            list_id: identity.id().to_string(),
            salt: secret::random_hex()?,
        };
        let points = self.report.total.get();
        let number = self.week.catalogue_number;
        let sealed = build_sealed_list(&contents, points, number, now, arrival)?;
        if !store::lists::seal(conn, week, self.player, identity, &sealed).await? {
            return Ok(None);
        }
        Ok(Some(Receipt {
            list: identity.id(),
            contents,
            digest: hex::encode(sealed.digest),
            sealed_at: now,
            arrival,
            report: self.report.clone(),
        }))
    }

    /// Whether it is on time or late. Leave is used under the list's lock, because it serves once.
    async fn arrival(&self, conn: &mut Conn) -> Result<(ListArrival, Option<ListId>), Refusal> {
        let (facts, player) = (&self.week.facts, self.player);
        let Turn { mut existing, now } = self.turn;
        let week = self.season.key.week(self.week.week);
        let leave = facts.needs_leave(now) && store::lists::has_leave(conn, week, player).await?;
        if leave {
            let locked = store::lists::lock(conn, week, player).await?;
            let drawn = store::rounds::list(conn, week.season, Some(week.week)).await?;
            may_still_come(locked.sealed.as_ref(), !drawn.is_empty())?;
            existing = Some(locked.id);
        }
        let arrival = accept_list(facts, now, leave).map_err(|why| not_accepted(why, now))?;
        Ok((arrival, existing))
    }

    /// Before the lists are opened nobody is told.
    async fn finish(&self, tx: Tx<'_>, receipt: Receipt) -> Result<Committed<Receipt>, Refusal> {
        if self.week.facts.lists_opened_at.is_none() {
            return Ok(tx.commit(receipt));
        }
        let act = TrailAct::SealList {
            player: self.player.0,
            week: self.week.week.number(),
            late_minutes: late_minutes(receipt.arrival),
            receipt: receipt.digest.clone(),
        };
        let change = SeasonChange::new(self.season.key, self.actor, self.turn.now, act);
        Ok(tx.publish(change).await?.with(receipt))
    }
}

/// The row of a sealed list, with its digest.
pub(super) fn build_sealed_list(
    contents: &ReceiptInput,
    points: u32,
    catalogue_number: i32,
    now: Instant,
    arrival: ListArrival,
) -> Result<SealedListRow, Refusal> {
    let canonical = contents
        .canonical()
        .map_err(|cause| Refusal::Internal(cause.to_string()))?;
    Ok(SealedListRow {
        list: contents.list.clone(),
        points,
        catalogue_number,
        salt: contents.salt.clone().into_bytes(),
        digest: secret::digest_bytes(&canonical),
        sealed_at: now,
        late_minutes: late_minutes(arrival),
        stands_in: false,
    })
}

fn late_minutes(arrival: ListArrival) -> Option<u32> {
    match arrival {
        ListArrival::OnTime => None,
        ListArrival::Late { minutes } => Some(minutes),
    }
}

/// Leave is for whoever handed in nothing, once, and only until a round is drawn from the lists.
fn may_still_come(sealed: Option<&SealedListRow>, is_drawn: bool) -> Result<(), Refusal> {
    let message = if sealed.is_some_and(|sealed| !sealed.stands_in) {
        army_lists::list_stands()
    } else if is_drawn {
        army_lists::round_drawn()
    } else {
        return Ok(());
    };
    Err(Refusal::rule(Reason::ListLocked, message))
}

fn not_accepted(why: ListNotAccepted, now: Instant) -> Refusal {
    match why {
        ListNotAccepted::NotAnnounced => {
            Refusal::rule(Reason::WeekState, seasons::week_not_announced())
        }
        ListNotAccepted::Closed => Refusal::rule(Reason::ListLocked, seasons::week_is_closed()),
        ListNotAccepted::DeadlinePassed(deadline) => {
            Refusal::rule(Reason::DeadlinePassed, army_lists::deadline_passed())
                .fact("deadline", deadline.to_rfc3339())
                .fact("server_time", now.to_rfc3339())
        }
    }
}
