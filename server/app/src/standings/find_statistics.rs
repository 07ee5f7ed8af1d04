//! Games counted by faction, role and scenario; ranks over the weeks; who met whom.

use std::collections::BTreeMap;

use league::ids::{ClubId, PlayerId, SeasonId};
use league::scenario::{Roles, ScenarioSheet};
use league::side::Side;
use league::standings::{
    GameSeen, RankHistory, SeasonFacts, Tally, games_seen, rank_history, tally,
};
use league::week::WeekNo;
use store::players::Player;
use store::weeks::Week;

use super::Board;
use crate::facts;
use crate::seasons::find_scenario::{ScenarioSeen, seen};
use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// Fewest games of which a share is said. With 10 the interval of an even share still spans more
/// than half of all that is possible, 24 % to 76 %. Common practice, no source.
pub const FEWEST_GAMES: u32 = 10;

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
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: Option<WeekNo>,
) -> Result<SeasonStatistics, Refusal> {
    desk.store
        .read(async |conn| {
            let look = look(conn, viewer, club, season).await?;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &look.season, now).await?;
            let as_of = loaded.as_of(week)?;
            let seen = |week: &Week| Some((week.week, seen(&look, week, now)?));
            let scenarios = loaded.weeks.iter().filter_map(seen).collect();
            let version = look.season.version;
            count(version, as_of, &loaded.facts, &loaded.players, scenarios)
        })
        .await
}

/// The statistics of a board, as everybody may know them.
///
/// # Errors
/// [`Refusal::Broken`] for a scenario that can no longer be read.
pub fn statistics(board: &Board, as_of: WeekNo) -> Result<SeasonStatistics, Refusal> {
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
    scenarios: BTreeMap<WeekNo, ScenarioSeen>,
) -> Result<SeasonStatistics, Refusal> {
    let games = games_seen(facts, as_of);
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
        scenarios: tally(&games, FEWEST_GAMES, |game| {
            let title = titles.get(&game.week).cloned();
            title.filter(|_| game.side == Side::First)
        }),
        ranks: rank_history(facts, as_of),
        met: met(&games),
    })
}

fn title(seen: ScenarioSeen) -> String {
    match seen {
        ScenarioSeen::Title(title) => title,
        ScenarioSeen::Full(sheet) => sheet.title,
    }
}

fn by_faction(games: &[GameSeen], players: &[Player]) -> Vec<Tally<String>> {
    let factions: BTreeMap<PlayerId, &String> = players
        .iter()
        .map(|player| (player.id, &player.faction))
        .collect();
    tally(games, FEWEST_GAMES, |game| {
        let own = *factions.get(&game.player)?;
        let other = *factions.get(&game.opponent)?;
        (own != other).then(|| own.clone())
    })
}

fn by_role(
    games: &[GameSeen],
    scenarios: &BTreeMap<WeekNo, ScenarioSeen>,
) -> Result<Vec<Tally<String>>, Refusal> {
    let mut with_roles = Vec::new();
    for (&week, seen) in scenarios {
        let ScenarioSeen::Full(sheet) = seen else {
            continue;
        };
        let sheet = ScenarioSheet::try_from(sheet.as_ref().clone())
            .map_err(|faults| Refusal::Broken(format!("sheet of week {week}: {faults:?}")))?;
        if sheet.terms().roles != Roles::Symmetric {
            with_roles.push(week);
        }
    }
    Ok(tally(games, FEWEST_GAMES, |game| {
        let role = game.side.role_in_leg(0).word().to_owned();
        with_roles.contains(&game.week).then_some(role)
    }))
}

fn met(games: &[GameSeen]) -> BTreeMap<PlayerId, Vec<PlayerId>> {
    let mut in_order: Vec<&GameSeen> = games.iter().collect();
    in_order.sort_by_key(|game| game.week);
    let mut met: BTreeMap<PlayerId, Vec<PlayerId>> = BTreeMap::new();
    for game in in_order {
        met.entry(game.player).or_default().push(game.opponent);
    }
    met
}
