//! The difference between two versions of a catalogue, and the lists that it touches.

use document::lists::army_list::ArmyListDocument;
use league::catalogue::Catalogue;
use league::catalogue::diff::{TouchedEntry, UnitDifference, diff, find_touched_entries};
use league::club_role::ClubRole;
use league::ids::{CatalogueId, ClubId, SeasonId};
use league::lists::ArmyList;
use league::season::SeasonState;
use league::week::WeekNo;
use store::Conn;
use store::seasons::Season;

use super::load_catalogue::load_catalogue;
use crate::access::authorize;
use crate::lists::list_opened_lists;
use crate::{Action, Actor, App, Refusal};

/// The difference between two versions.
#[derive(Clone, Debug)]
pub struct CatalogueChanges {
    /// Every unit that differs.
    pub units: Vec<UnitDifference>,
    /// The actor's own newest lists in running seasons, where they are touched.
    pub own: Vec<TouchedList>,
    /// For those who run seasons: the newest opened lists of each running season.
    pub opened: Vec<OpenedLists>,
}

/// A list that is touched. It keeps the points of its own version; this is what comes next.
#[derive(Clone, Debug)]
pub struct TouchedList {
    pub season: SeasonId,
    pub week: WeekNo,
    /// Whether it was handed in, or is a draft.
    pub sealed: bool,
    /// The entries whose points or availability differ.
    pub entries: Vec<TouchedEntry>,
}

/// How many of the newest opened lists are touched.
#[derive(Clone, Copy, Debug)]
pub struct OpenedLists {
    pub season: SeasonId,
    /// The last week whose lists are opened.
    pub week: WeekNo,
    /// Lists opened in that week.
    pub lists: usize,
    /// Those that are touched.
    pub touched: usize,
}

/// Nobody learns of another's list before it is opened, and so no draft of others is counted.
///
/// # Errors
/// [`Refusal::NotFound`] when either version is missing.
pub async fn find_catalogue_changes(
    app: &App,
    actor: Actor,
    club: ClubId,
    id: CatalogueId,
    since: i32,
    number: i32,
) -> Result<CatalogueChanges, Refusal> {
    app.store
        .read(async |conn| {
            let role = authorize(conn, actor, club, Action::View).await?;
            let versions = Versions {
                old: load_catalogue(conn, club, id, since).await?,
                new: load_catalogue(conn, club, id, number).await?,
            };
            let seasons = store::seasons::list(conn, club).await?;
            let running = seasons
                .into_iter()
                .filter(|season| season.catalogue == id && season.state == SeasonState::Started);
            let (mut own, mut opened) = (Vec::new(), Vec::new());
            for season in running {
                own.extend(versions.own_lists(conn, actor, &season).await?);
                if matches!(role, ClubRole::Owner | ClubRole::Organiser) {
                    opened.extend(versions.opened_lists(conn, &season).await?);
                }
            }
            Ok(CatalogueChanges {
                units: diff(&versions.old, &versions.new),
                own,
                opened,
            })
        })
        .await
}

struct Versions {
    old: Catalogue,
    new: Catalogue,
}

impl Versions {
    async fn own_lists(
        &self,
        conn: &mut Conn,
        actor: Actor,
        season: &Season,
    ) -> Result<Vec<TouchedList>, Refusal> {
        let key = season.key();
        let player = store::players::find_by_account(conn, key, actor.account).await?;
        let Some(player) = player else {
            return Ok(Vec::new());
        };
        let lists = store::lists::list_by_player(conn, key, player.id).await?;
        let Some(newest) = lists.into_iter().next_back() else {
            return Ok(Vec::new());
        };
        let sealed = newest.sealed.map(|sealed| sealed.list);
        let mut found = Vec::new();
        for (list, sealed) in [(newest.draft, false), (sealed, true)] {
            let entries = list.map_or(Ok(Vec::new()), |list| self.find_touched(list))?;
            if !entries.is_empty() {
                found.push(TouchedList {
                    season: key.season,
                    week: newest.week,
                    sealed,
                    entries,
                });
            }
        }
        Ok(found)
    }

    async fn opened_lists(
        &self,
        conn: &mut Conn,
        season: &Season,
    ) -> Result<Option<OpenedLists>, Refusal> {
        let key = season.key();
        let weeks = store::weeks::list(conn, key).await?;
        let mut opened = weeks
            .iter()
            .filter(|week| week.facts.lists_opened_at.is_some());
        let newest = opened.next_back();
        let newest = newest.and_then(|week| Some((week.week, week.facts.lists_opened_at?)));
        let Some((week, opened_at)) = newest else {
            return Ok(None);
        };
        let lists = list_opened_lists(conn, key.week(week), opened_at).await?;
        let mut counted = OpenedLists {
            season: key.season,
            week,
            lists: 0,
            touched: 0,
        };
        for sealed in lists.into_iter().filter_map(|list| list.sealed) {
            counted.lists += 1;
            counted.touched += usize::from(!self.find_touched(sealed.list)?.is_empty());
        }
        Ok(Some(counted))
    }

    fn find_touched(&self, list: ArmyListDocument) -> Result<Vec<TouchedEntry>, Refusal> {
        let list = ArmyList::try_from(list)
            .map_err(|faults| Refusal::Internal(format!("a list that was kept: {faults:?}")))?;
        Ok(find_touched_entries(&list, &self.old, &self.new))
    }
}
