//! Handing in: checked, judged by the one clock under the week's lock, sealed with a receipt.

use document::list::ArmyListDocument;
use document::receipt::SealedList as ReceiptInput;
use league::ids::{ClubId, ListId, SeasonId};
use league::lists::Report;
use league::season::{Arrival, NotAccepted, accept_list};
use league::time::Instant;
use league::week::WeekNo;
use store::lists::SealedList;

use super::terms::{WeekTerms, must_be_legal, read};
use crate::record::Scene;
use crate::seasons::look::{look, must_play, own_place};
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

/// Seals `list` for the week, in the place of any sealed before.
///
/// Nothing about it reaches the trail before the lists are opened: even when somebody handed in is
/// nobody's business until then.
///
/// # Errors
/// [`Reason::DeadlinePassed`], [`Reason::ListLocked`], [`Reason::PointsCapExceeded`] or
/// [`Reason::ListBreaksRules`] with every breach; then nothing is written.
pub async fn seal_list(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    list: ArmyListDocument,
) -> Result<Receipt, Refusal> {
    let list = read(list)?;
    desk.store
        .write(async |conn| {
            let season = look(conn, Some(actor), club, season).await?.season;
            let player = own_place(conn, actor, &season).await?;
            must_play(&player, week)?;
            let week = store::weeks::hold(conn, club, season.id, week).await?;
            let terms = WeekTerms::load(conn, &season, &week, &player).await?;
            let report = terms.check(&list);
            let slot = store::lists::lock(conn, club, season.id, week.week, player.id).await?;
            // Read as late as can be: whoever waited for a lock across the deadline is late.
            let now = store::clock::now(conn).await?;
            let leave = week.facts.needs_leave(now)
                && store::lists::has_leave(conn, club, season.id, week.week, player.id).await?;
            let arrival = accept_list(&week.facts, now, leave).map_err(|why| refuse(why, now))?;
            must_be_legal(&list, &report)?;
            let contents = ReceiptInput {
                list: ArmyListDocument::from(&list),
                list_id: slot.id.to_string(),
                salt: secret::draw_text()?,
            };
            let sealed = sealed(
                &contents,
                report.total.get(),
                week.catalogue_number,
                now,
                arrival,
            )?;
            store::lists::seal(conn, club, season.id, &slot, &sealed).await?;
            if week.facts.lists_opened_at.is_some() {
                Scene::in_season(&season, actor, now)
                    .tell_everyone(
                        conn,
                        "seal_list",
                        serde_json::json!({
                            "player": player.id.0,
                            "week": week.week.number(),
                            "late_minutes": sealed.late_minutes,
                            "receipt": document::hex(&sealed.digest),
                        }),
                    )
                    .await?;
            }
            let digest = document::hex(&sealed.digest);
            Ok(Receipt {
                list: slot.id,
                contents,
                digest,
                sealed_at: now,
                arrival,
                report,
            })
        })
        .await
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
