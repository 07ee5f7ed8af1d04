//! Saving the draft of a list, which may break every rule; only its owner ever sees it.

use document::lists::army_list::ArmyListDocument;
use league::keys::WeekKey;
use messages::{army_lists, seasons};

use super::terms::parse_list;
use crate::access::{authorize_player, must_play};
use crate::{Actor, App, Reason, Refusal};

/// Answers the new revision. `revision` is the one that was changed; `None` for the first save.
///
/// # Errors
/// [`Reason::PreconditionRequired`] without the revision of a draft that there is;
/// [`Reason::VersionMismatch`] when another window saved in between; [`Reason::ListLocked`] once the
/// week is closed; [`Reason::Validation`] for a list that is none.
pub async fn save_draft(
    app: &App,
    actor: Actor,
    week: WeekKey,
    revision: Option<i64>,
    draft: ArmyListDocument,
) -> Result<i32, Refusal> {
    let draft = ArmyListDocument::from(&parse_list(draft)?);
    app.write(async |mut tx| {
        let (season, player) = authorize_player(&tx, actor.account, week.season).await?;
        let player = must_play(&player, week.week)?;
        let facts = store::week_limits::lock_shared(&tx, week).await?.facts;
        if facts.closed_at.is_some() {
            return Err(Refusal::rule(Reason::ListLocked, seasons::week_is_closed()));
        }
        let old = store::lists::lock(&mut tx, week, player).await?;
        if revision.is_none() && old.draft_revision > 0 {
            return Err(Refusal::rule(
                Reason::PreconditionRequired,
                army_lists::draft_revision_needed(),
            )
            .fact("revision", old.draft_revision));
        }
        // Revision 0 is that of a list without a draft; above it one had to be named.
        if i64::from(old.draft_revision) != revision.unwrap_or(0) {
            return Err(
                Refusal::rule(Reason::VersionMismatch, army_lists::draft_stale())
                    .fact("revision", old.draft_revision),
            );
        }
        let revision = store::lists::update_draft(&mut tx, season.key, &old, &draft).await?;
        Ok(tx.commit(revision))
    })
    .await
}
