//! Handing in: checked, judged by the one clock under the week's lock, sealed with a receipt.

use document::list::ArmyListDocument;
use document::receipt::SealedList as ReceiptInput;
use futures_util::future::join4;
use league::ids::{ClubId, ListId, PlayerId, SeasonId};
use league::lists::{ArmyList, Report};
use league::season::{Arrival, NotAccepted, accept_list};
use league::time::Instant;
use league::week::WeekNo;
use store::Conn;
use store::bounds::Bounds;
use store::lists::{Identity, SealedList};

use super::terms::{WeekTerms, must_be_legal, read};
use crate::accounts::Claimant;
use crate::record::Scene;
use crate::seasons::look::{Running, find_place, must_play};
use crate::{Actor, Desk, Reason, Refusal, secret};

/// The proof of what was sealed.
#[derive(Clone, Debug)]
pub struct Receipt {
    /// The list's identity.
    pub list: ListId,
    /// What was sealed, with the salt: the input of the digest.
    pub contents: ReceiptInput,
    /// SHA-256 of the canonical JSON of `contents`, in hexadecimal.
    pub digest: String,
    /// When.
    pub sealed_at: Instant,
    /// How it came in.
    pub arrival: Arrival,
    /// What the check said: remarks at most.
    pub report: Report,
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
    desk: &Desk,
    who: impl Into<Claimant>,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    list: ArmyListDocument,
) -> Result<Receipt, Refusal> {
    let list = read(list)?;
    let who = who.into();
    let account = who.account();
    let find_begun = async |conn: &Conn| {
        store::lists::find_begun_and_now(conn, club, season, week, account).await
    };
    // The clock last, once the week is held: whoever waited for it across the deadline is late.
    let look = async |conn: &Conn| {
        let place = find_place(conn, account, club, season);
        let bounds = store::bounds::hold(conn, club, season, week);
        let begun = find_begun(conn);
        // Whoever proves to be nobody hears of nothing else.
        let (actor, place, bounds, begun) = join4(who.prove(conn), place, bounds, begun).await;
        Ok((actor?, place?, bounds?, begun?))
    };
    desk.store
        .write_after(
            look,
            async |conn, (actor, (season, player), week, (mut begun, now))| {
                must_play(&player, week.week)?;
                let terms = WeekTerms::load(desk, conn, season, week, &player).await?;
                let submission = Submission {
                    actor,
                    season,
                    week,
                    player: player.id,
                    list: &list,
                    report: terms.check(&list),
                    now,
                };
                loop {
                    if let Some(receipt) = submission.seal(desk, conn, begun).await? {
                        return Ok(receipt);
                    }
                    (begun, _) = find_begun(conn).await?;
                }
            },
        )
        .await
}

/// A checked list on its way in, its week held.
struct Submission<'a> {
    actor: Actor,
    season: Running,
    week: Bounds,
    player: PlayerId,
    list: &'a ArmyList,
    report: Report,
    now: Instant,
}

impl Submission<'_> {
    /// Nothing when the player began a list of this week at the same moment: from then on it is there.
    async fn seal(
        &self,
        desk: &Desk,
        conn: &mut Conn,
        begun: Option<ListId>,
    ) -> Result<Option<Receipt>, Refusal> {
        let (club, season) = (self.season.club, self.season.id);
        let slot = (self.week.week, self.player);
        let (arrival, begun) = self.arrival(conn, begun).await?;
        must_be_legal(self.list, &self.report)?;
        let identity = Identity::from(begun);
        let contents = ReceiptInput {
            list: ArmyListDocument::from(self.list),
            list_id: identity.id().to_string(),
            salt: secret::draw_text()?,
        };
        let points = self.report.total.get();
        let number = self.week.catalogue_number;
        let sealed = sealed(&contents, points, number, self.now, arrival)?;
        if !store::lists::seal(conn, club, season, slot, identity, &sealed).await? {
            return Ok(None);
        }
        self.tell(desk, conn, &sealed).await?;
        Ok(Some(Receipt {
            list: identity.id(),
            contents,
            digest: document::hex(&sealed.digest),
            sealed_at: self.now,
            arrival,
            report: self.report.clone(),
        }))
    }

    /// How it comes in; with leave, under the list's lock, for that serves once.
    async fn arrival(
        &self,
        conn: &mut Conn,
        mut begun: Option<ListId>,
    ) -> Result<(Arrival, Option<ListId>), Refusal> {
        let (facts, season, now) = (&self.week.facts, self.season, self.now);
        let (week, player) = (self.week.week, self.player);
        let leave = facts.needs_leave(now)
            && store::lists::has_leave(conn, season.club, season.id, week, player).await?;
        if leave {
            let locked = store::lists::lock(conn, season.club, season.id, week, player).await?;
            let drawn = store::rounds::list(conn, season.club, season.id, Some(week)).await?;
            may_still_come(locked.sealed.as_ref(), !drawn.is_empty())?;
            begun = Some(locked.id);
        }
        let arrival = accept_list(facts, now, leave).map_err(|why| refuse(why, now))?;
        Ok((arrival, begun))
    }

    /// Before the lists are opened there is nothing to tell.
    async fn tell(&self, desk: &Desk, conn: &mut Conn, sealed: &SealedList) -> Result<(), Refusal> {
        if self.week.facts.lists_opened_at.is_none() {
            return Ok(());
        }
        let facts = serde_json::json!({
            "player": self.player.0,
            "week": self.week.week.number(),
            "late_minutes": sealed.late_minutes,
            "receipt": document::hex(&sealed.digest),
        });
        Scene::in_season(self.season.key(), self.actor, sealed.sealed_at)
            .tell_everyone(desk, conn, "seal_list", facts)
            .await
    }
}

/// A list as it is kept, with its digest.
pub(super) fn sealed(
    contents: &ReceiptInput,
    points: u32,
    catalogue_number: i32,
    now: Instant,
    arrival: Arrival,
) -> Result<SealedList, Refusal> {
    let canonical = contents
        .canonical()
        .map_err(|cause| Refusal::Broken(cause.to_string()))?;
    Ok(SealedList {
        list: contents.list.clone(),
        points,
        catalogue_number,
        salt: contents.salt.clone().into_bytes(),
        digest: secret::digest_bytes(&canonical),
        sealed_at: now,
        late_minutes: match arrival {
            Arrival::OnTime => None,
            Arrival::Late { minutes } => Some(minutes),
        },
        stands_in: false,
    })
}

/// Leave is for whoever handed in nothing, once, and only until a round is drawn from the lists.
fn may_still_come(sealed: Option<&SealedList>, is_drawn: bool) -> Result<(), Refusal> {
    let detail = if sealed.is_some_and(|sealed| !sealed.stands_in) {
        "The deadline has passed; the list that was handed in stands."
    } else if is_drawn {
        "The round is drawn; no list comes in any more."
    } else {
        return Ok(());
    };
    Err(Refusal::rule(Reason::ListLocked, detail))
}

fn refuse(why: NotAccepted, now: Instant) -> Refusal {
    match why {
        NotAccepted::NotAnnounced => {
            Refusal::rule(Reason::WeekState, "The week is not announced yet.")
        }
        NotAccepted::Closed => Refusal::rule(Reason::ListLocked, "The week is closed."),
        NotAccepted::DeadlinePassed(deadline) => Refusal::rule(
            Reason::DeadlinePassed,
            "The deadline has passed. Ask the organiser for leave to hand in late.",
        )
        .fact("deadline", deadline.to_rfc3339())
        .fact("server_time", now.to_rfc3339()),
    }
}
