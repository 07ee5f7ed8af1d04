//! Games counted by faction, role and scenario; ranks over the weeks; who met whom.

use std::collections::BTreeMap;

use league::ids::{ClubId, PlayerId, SeasonId};
use league::scenario::Roles;
use league::side::Side;
use league::standings::{GameSeen, RankHistory, Tally, games_seen, rank_history, tally};
use league::week::WeekNo;
use store::players::Player;

use crate::facts::{self, Loaded, sheet};
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
    /// By the role of the first leg, where the scenario has roles.
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
            let loaded = facts::load(conn, &look.season, now).await?;
            let as_of = loaded.as_of(week)?;
            let mut titles = BTreeMap::new();
            for week in &loaded.weeks {
                titles.extend(seen(&look, week, now).map(|seen| (week.week, title(seen))));
            }
            let games = games_seen(&loaded.facts, as_of);
            Ok(SeasonStatistics {
                version: look.season.version,
                as_of,
                factions: by_faction(&games, &loaded.players),
                roles: by_role(&games, &loaded)?,
                scenarios: tally(&games, FEWEST_GAMES, |game| {
                    let title = titles.get(&game.week).cloned();
                    title.filter(|_| game.side == Side::First)
                }),
                ranks: rank_history(&loaded.facts, as_of),
                met: met(&games),
            })
        })
        .await
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

fn by_role(games: &[GameSeen], loaded: &Loaded) -> Result<Vec<Tally<String>>, Refusal> {
    let mut with_roles = Vec::new();
    for week in &loaded.weeks {
        if sheet(week)?.is_some_and(|sheet| sheet.terms().roles != Roles::Symmetric) {
            with_roles.push(week.week);
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
