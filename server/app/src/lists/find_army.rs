//! A player's army week by week: what was fielded against the cap, and what was painted.

use std::collections::BTreeMap;

use league::catalogue::Catalogue;
use league::catalogue::key::KindKey;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::lists::ArmyList;
use league::lists::line::lines;
use league::painting::{PaintedUnit, painted_units};
use league::points::Points;
use league::week::WeekNo;
use store::Conn;
use store::seasons::Season;

use super::opened::is_list_open;
use crate::catalogues::CatalogueCache;
use crate::load_season::view_loaded_season;
use crate::loaded_season::{LoadedSeason, listed_units};
use crate::{App, Refusal, Viewer};

/// One week of an army.
#[derive(Clone, Debug)]
pub struct ArmyWeek {
    pub week: WeekNo,
    pub cap: Points,
    /// What was fielded, once the lists of the week are opened.
    pub fielded: Option<Fielded>,
}

/// What one opened list says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fielded {
    /// Army points by unit kind, in the order of the kinds' keys.
    pub kinds: BTreeMap<KindKey, Points>,
    /// Army points newly finished in this week.
    pub newly_finished: Points,
    /// What each entry adds to the painted share, in the order of the list.
    pub entries: Vec<PaintedEntry>,
}

/// An entry of an opened list with its paint.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaintedEntry {
    /// Name of its unit.
    pub name: String,
    /// Its models, and the points that count.
    pub painted: PaintedUnit,
}

impl Fielded {
    /// Army points of the list.
    pub fn total(&self) -> Points {
        self.kinds.values().copied().sum()
    }
}

/// Every week of the season in order.
///
/// # Errors
/// [`Refusal::NotFound`] also for somebody who never joined.
pub async fn find_army(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    player: PlayerId,
) -> Result<Vec<ArmyWeek>, Refusal> {
    app.store
        .read(async |conn| {
            let (season, loaded) = view_loaded_season(conn, app, viewer, season).await?;
            if !loaded.players.iter().any(|known| known.id == player) {
                return Err(Refusal::NotFound);
            }
            let mut fielded = fielded(conn, &app.catalogue_cache, &season, &loaded, player).await?;
            let weeks = loaded.weeks.iter().map(|week| ArmyWeek {
                week: week.week,
                cap: week.cap,
                fielded: fielded.remove(&week.week),
            });
            Ok(weeks.collect())
        })
        .await
}

/// What the player fielded in each week whose lists are opened.
async fn fielded(
    conn: &mut Conn,
    catalogue_cache: &CatalogueCache,
    season: &Season,
    loaded: &LoadedSeason,
    player: PlayerId,
) -> Result<BTreeMap<WeekNo, Fielded>, Refusal> {
    let log = store::painting::find_log(conn, season.key(), Some(player)).await?;
    let mut fielded = BTreeMap::new();
    for own in store::lists::list_by_player(conn, season.key(), player).await? {
        let slot = (own.week, player);
        let opened = is_list_open(&loaded.weeks, &loaded.players, slot);
        let (Some(sealed), true) = (own.sealed, opened) else {
            continue;
        };
        let number = sealed.catalogue_number;
        let find = catalogue_cache.get_or_load(conn, season.club, season.catalogue, number);
        let catalogue = find.await?;
        let list = ArmyList::try_from(sealed.list)
            .map_err(|faults| Refusal::Internal(format!("a sealed list: {faults:?}")))?;
        let painted = loaded.facts.painted.iter();
        let painted = painted.filter(|week| (week.player, week.week) == (player, own.week));
        let units = listed_units(&list, &catalogue);
        let paint = painted_units(&loaded.facts.painting, player, own.week, &units, &log);
        let of_list = Fielded {
            kinds: by_kind(&list, &catalogue),
            newly_finished: painted.map(|week| week.new_points).sum(),
            entries: named(&list, &catalogue, paint),
        };
        fielded.insert(own.week, of_list);
    }
    Ok(fielded)
}

fn named(list: &ArmyList, catalogue: &Catalogue, paint: Vec<PaintedUnit>) -> Vec<PaintedEntry> {
    let lines = lines(list, catalogue).into_iter().zip(paint);
    let entries = lines.map(|(line, painted)| PaintedEntry {
        name: line.name().to_owned(),
        painted,
    });
    entries.collect()
}

/// Points of a list by the kind of its units; an entry that the catalogue does not know costs nothing.
fn by_kind(list: &ArmyList, catalogue: &Catalogue) -> BTreeMap<KindKey, Points> {
    let mut kinds = BTreeMap::new();
    for line in lines(list, catalogue) {
        if let Some(unit) = line.unit {
            *kinds.entry(unit.kind.clone()).or_insert(Points::ZERO) += line.points;
        }
    }
    kinds
}
