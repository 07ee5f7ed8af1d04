//! Parsing a pasted text as a list, with what was understood line by line. Nothing is saved.

use league::catalogue::key::FactionKey;
use league::keys::{SeasonKey, WeekKey};
use league::lists::reader::{self, Reading};
use league::lists::{ArmyList, brought_list};
use messages::army_lists;

use super::terms::find_own_terms;
use crate::access::authorize_player;
use crate::run_blocking::run_blocking;
use crate::{Actor, App, Reason, Refusal};

/// Most bytes of a text.
const MAX_TEXT_BYTES: usize = 32 * 1024;

/// Units of the text that can be those of the player's last list, or of what was brought into the
/// season before the first, get their keys, so that carry-over and paint go on.
///
/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::InvalidText`] for a text of more
/// than 32 KiB.
pub async fn read_list(
    app: &App,
    actor: Actor,
    week: WeekKey,
    text: String,
) -> Result<Reading, Refusal> {
    if text.len() > MAX_TEXT_BYTES {
        let message = army_lists::list_text_too_long(MAX_TEXT_BYTES);
        let refusal = Refusal::fault(Reason::InvalidText, "/text", message);
        return Err(refusal.with(MAX_TEXT_BYTES, text.len()));
    }
    let terms = find_own_terms(app, actor, week).await?;
    let known = match &terms.last {
        Some(last) => Some(last.list.clone()),
        None => find_brought(app, actor, week.season, &terms.faction).await?,
    };
    run_blocking(move || {
        let reading = reader::parse(&text, &terms.catalogue, Some(&terms.faction));
        match &known {
            Some(known) => reading.with_reused_keys(known),
            None => reading,
        }
    })
    .await
}

/// What was brought into the season, as a list.
async fn find_brought(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    faction: &FactionKey,
) -> Result<Option<ArmyList>, Refusal> {
    app.store
        .read(async |conn| {
            let (season, player) = authorize_player(conn, actor.account, season).await?;
            let brought = store::brought_units::list(conn, season.key, Some(player.id)).await?;
            Ok(brought_list(&brought, faction))
        })
        .await
}
