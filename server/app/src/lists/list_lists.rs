//! The lists of a week: all of them once opened; before that organisers see who has one, and nothing
//! of what is in it.

use std::collections::BTreeMap;

use league::ids::PlayerId;
use league::keys::WeekKey;
use store::lists::{PlayerList, SealedListRow};

use super::opened::list_opened_lists;
use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// How far a player is, without a word about the list itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListState {
    /// Nothing handed in and nothing begun.
    Missing,
    Draft,
    Sealed,
}

/// What may be seen.
#[derive(Clone, Debug)]
pub enum WeekLists {
    /// Every opened list, and who plays without any.
    Opened(Vec<(PlayerId, Option<SealedListRow>)>),
    /// Who has one.
    States(Vec<(PlayerId, ListState)>),
}

/// # Errors
/// [`Refusal::NotFound`] before the lists are opened, except to those who run the season.
pub async fn list_lists(app: &App, viewer: Viewer, week: WeekKey) -> Result<WeekLists, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, week.season).await?;
            let facts = store::weeks::find(conn, week).await?.facts;
            let players = store::players::list(conn, week.season).await?;
            let playing = players.iter().filter(|player| player.plays_in(week.week));
            if let Some(opened_at) = facts.lists_opened_at {
                let lists = list_opened_lists(conn, week, opened_at).await?;
                let lists = lists.into_iter().map(|list| (list.player, list.sealed));
                let mut seen: BTreeMap<PlayerId, Option<SealedListRow>> = lists.collect();
                for player in playing {
                    seen.entry(player.id).or_default();
                }
                return Ok(WeekLists::Opened(seen.into_iter().collect()));
            }
            if !view.runs_season() {
                return Err(Refusal::NotFound);
            }
            let lists = store::lists::list_by_week(conn, week).await?;
            let states = playing.map(|player| {
                let list = lists.iter().find(|list| list.player == player.id);
                (player.id, list.map_or(ListState::Missing, state))
            });
            Ok(WeekLists::States(states.collect()))
        })
        .await
}

fn state(list: &PlayerList) -> ListState {
    match (&list.sealed, &list.draft) {
        (Some(_), _) => ListState::Sealed,
        (None, Some(_)) => ListState::Draft,
        (None, None) => ListState::Missing,
    }
}
