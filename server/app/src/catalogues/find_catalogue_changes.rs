//! What a version of a catalogue changes since an earlier one, and whose lists that touches.

use document::list::ArmyListDocument;
use league::catalogue::Catalogue;
use league::catalogue::diff::{Touched, UnitDifference, diff, touched};
use league::ids::{CatalogueId, ClubId, SeasonId};
use league::lists::ArmyList;
use league::role::Role;
use league::season::SeasonState;
use league::week::WeekNo;
use store::Conn;
use store::seasons::Season;

use super::load;
use crate::lists::list_opened;
use crate::may::may;
use crate::{Action, Actor, Desk, Refusal};

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
    /// In which season.
    pub season: SeasonId,
    /// For which week.
    pub week: WeekNo,
    /// Whether it was handed in, or is a draft.
    pub sealed: bool,
    /// The entries whose points or availability differ.
    pub entries: Vec<Touched>,
}

/// How many of the newest opened lists are touched.
#[derive(Clone, Copy, Debug)]
pub struct OpenedLists {
    /// In which season.
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
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    id: CatalogueId,
    since: i32,
    number: i32,
) -> Result<CatalogueChanges, Refusal> {
    desk.store
        .read(async |conn| {
            let role = may(conn, actor, club, Action::Look).await?;
            let versions = Versions {
                old: load(conn, club, id, since).await?,
                new: load(conn, club, id, number).await?,
            };
            let seasons = store::seasons::list(conn, club).await?;
            let running = seasons
                .into_iter()
                .filter(|season| season.catalogue == id && season.state == SeasonState::Started);
            let (mut own, mut opened) = (Vec::new(), Vec::new());
            for season in running {
                own.extend(versions.own_lists(conn, actor, &season).await?);
                if matches!(role, Role::Owner | Role::Organiser) {
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
        let (club, id) = (season.club, season.id);
        let player = store::players::find_by_account(conn, club, id, actor.account).await?;
        let Some(player) = player else {
            return Ok(Vec::new());
        };
        let lists = store::lists::list_of_player(conn, club, id, player.id).await?;
        let Some(newest) = lists.into_iter().next_back() else {
            return Ok(Vec::new());
        };
        let sealed = newest.sealed.map(|sealed| sealed.list);
        let mut found = Vec::new();
        for (list, sealed) in [(newest.draft, false), (sealed, true)] {
            let entries = list.map_or(Ok(Vec::new()), |list| self.touched(list))?;
            if !entries.is_empty() {
                found.push(TouchedList {
                    season: id,
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
        let (club, id) = (season.club, season.id);
        let weeks = store::weeks::list(conn, club, id).await?;
        let mut opened = weeks
            .iter()
            .filter(|week| week.facts.lists_opened_at.is_some());
        let newest = opened.next_back();
        let newest = newest.and_then(|week| Some((week.week, week.facts.lists_opened_at?)));
        let Some((week, opened_at)) = newest else {
            return Ok(None);
        };
        let lists = list_opened(conn, club, id, week, opened_at).await?;
        let mut counted = OpenedLists {
            season: id,
            week,
            lists: 0,
            touched: 0,
        };
        for sealed in lists.into_iter().filter_map(|list| list.sealed) {
            counted.lists += 1;
            counted.touched += usize::from(!self.touched(sealed.list)?.is_empty());
        }
        Ok(Some(counted))
    }

    fn touched(&self, list: ArmyListDocument) -> Result<Vec<Touched>, Refusal> {
        let list = ArmyList::try_from(list)
            .map_err(|faults| Refusal::Broken(format!("a list that was kept: {faults:?}")))?;
        Ok(touched(&list, &self.old, &self.new))
    }
}
