//! Statistics of a season: games counted by faction, role and scenario; ranks over the weeks; who met
//! whom.

use std::collections::BTreeMap;

use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::scenario::{ScenarioRoles, ScenarioSheet};
use league::side::Side;
use league::standings::{
    RankHistory, SeasonFacts, SideGame, Tally, list_side_games, rank_history, tally,
};
use league::week::WeekNo;
use store::players::Player;
use store::weeks::Week;

use super::Board;
use crate::access::view_season;
use crate::load_season::load_season;
use crate::seasons::{VisibleScenario, visible_scenario};
use crate::{App, Refusal, Viewer};

/// Fewest games of which a share is said. With 10 the interval of an even share still spans more
/// than half of all that is possible, 24 % to 76 %. Common practice, no source.
pub const MIN_GAMES: u32 = 10;

/// What the games of a season have in common.
#[derive(Clone, Debug)]
pub struct SeasonStatistics {
    /// The season's version that they belong to.
    pub version: i64,
    /// Last week that counts.
    pub as_of: WeekNo,
    /// By faction; games between two armies of one faction are left out.
    pub factions: Vec<Tally<String>>,
    /// By the role of the first leg, where the scenario has roles and all of it is known.
    pub roles: Vec<Tally<String>>,
    /// By scenario, as the side named first saw it: the attacker where there are roles.
    pub scenarios: Vec<Tally<String>>,
    /// Rank after every week.
    pub ranks: Vec<RankHistory>,
    /// The opponents of everybody, week by week.
    pub met: BTreeMap<PlayerId, Vec<PlayerId>>,
}

/// # Errors
/// [`Refusal::NotFound`] also for a week the season does not have.
pub async fn find_statistics(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    week: Option<WeekNo>,
) -> Result<SeasonStatistics, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, season).await?;
            let now = store::clock::now(conn).await?;
            let loaded = load_season(conn, app, &view.season, now).await?;
            let as_of = loaded.week_or_last_paired(week)?;
            let visible = |week: &Week| Some((week.week, visible_scenario(&view, week, now)?));
            let scenarios = loaded.weeks.iter().filter_map(visible).collect();
            let version = view.season.version;
            count(version, as_of, &loaded.facts, &loaded.players, scenarios)
        })
        .await
}

/// The statistics of a board, as everybody may know them.
///
/// # Errors
/// [`Refusal::Internal`] for a scenario that can no longer be read.
pub fn board_statistics(board: &Board, as_of: WeekNo) -> Result<SeasonStatistics, Refusal> {
    let seen = board.weeks.iter();
    let seen = seen.filter_map(|week| Some((week.week, week.scenario.clone()?)));
    let version = board.season.version;
    count(version, as_of, &board.facts, &board.players, seen.collect())
}

fn count(
    version: i64,
    as_of: WeekNo,
    facts: &SeasonFacts,
    players: &[Player],
    scenarios: BTreeMap<WeekNo, VisibleScenario>,
) -> Result<SeasonStatistics, Refusal> {
    let games = list_side_games(facts, as_of);
    let roles = by_role(&games, &scenarios)?;
    let titles: BTreeMap<WeekNo, String> = scenarios
        .into_iter()
        .map(|(week, seen)| (week, title(seen)))
        .collect();
    Ok(SeasonStatistics {
        version,
        as_of,
        factions: by_faction(&games, players),
        roles,
        scenarios: tally(&games, MIN_GAMES, |game| {
            let title = titles.get(&game.week).cloned();
            title.filter(|_| game.side == Side::First)
        }),
        ranks: rank_history(facts, as_of),
        met: met(&games),
    })
}

fn title(seen: VisibleScenario) -> String {
    match seen {
        VisibleScenario::Title(title) => title,
        VisibleScenario::Full(sheet) => sheet.title,
    }
}

fn by_faction(games: &[SideGame], players: &[Player]) -> Vec<Tally<String>> {
    let factions: BTreeMap<PlayerId, &String> = players
        .iter()
        .map(|player| (player.id, &player.faction))
        .collect();
    tally(games, MIN_GAMES, |game| {
        let own = *factions.get(&game.player)?;
        let other = *factions.get(&game.opponent)?;
        (own != other).then(|| own.clone())
    })
}

fn by_role(
    games: &[SideGame],
    scenarios: &BTreeMap<WeekNo, VisibleScenario>,
) -> Result<Vec<Tally<String>>, Refusal> {
    let mut with_roles = Vec::new();
    for (&week, seen) in scenarios {
        let VisibleScenario::Full(sheet) = seen else {
            continue;
        };
        let sheet = ScenarioSheet::try_from(sheet.as_ref().clone())
            .map_err(|faults| Refusal::Internal(format!("sheet of week {week}: {faults:?}")))?;
        if sheet.terms().roles != ScenarioRoles::Symmetric {
            with_roles.push(week);
        }
    }
    Ok(tally(games, MIN_GAMES, |game| {
        let role = game.side.role_in_leg(0).as_str().to_owned();
        with_roles.contains(&game.week).then_some(role)
    }))
}

fn met(games: &[SideGame]) -> BTreeMap<PlayerId, Vec<PlayerId>> {
    let mut in_order: Vec<&SideGame> = games.iter().collect();
    in_order.sort_by_key(|game| game.week);
    let mut met: BTreeMap<PlayerId, Vec<PlayerId>> = BTreeMap::new();
    for game in in_order {
        met.entry(game.player).or_default().push(game.opponent);
    }
    met
}
