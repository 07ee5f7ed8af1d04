//! Loading the facts of a season: one place for pairing, standings and ledger alike.

use std::collections::{BTreeMap, BTreeSet};

use futures_util::future::try_join_all;
use league::keys::SeasonKey;
use league::lists::ArmyList;
use league::painting::{PaintedWeek, Painting, PaintingLog, painted_week};
use league::result::Slip;
use league::side::{GameRole, PerSide};
use league::standings::{Fixture, GameFact, LateList, PlayerFact, SeasonFacts, find_absences};
use league::time::Instant;
use league::week::WeekNo;
use store::Conn;
use store::games::GameRow;
use store::players::Player;
use store::seasons::Season;
use store::weeks::Week;
use tokio::try_join;

use crate::access::view_season;
use crate::catalogues::CatalogueCache;
use crate::lists::is_list_open;
use crate::loaded_season::{LoadedSeason, listed_units, parse_sheet};
use crate::{App, Refusal, Viewer};

/// The season that somebody looks at, with its facts as of this moment.
///
/// # Errors
/// [`Refusal::NotFound`] for a season that they may not see; those of [`load_season`].
pub(crate) async fn view_loaded_season(
    conn: &mut Conn,
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<(Season, LoadedSeason), Refusal> {
    let season = view_season(conn, viewer, season).await?.season;
    let now = store::clock::now(conn).await?;
    let loaded = load_season(conn, app, &season, now).await?;
    Ok((season, loaded))
}

/// Loads a season as of `now`: results that nobody disputed in time count as confirmed.
///
/// # Errors
/// [`Refusal::Internal`] when a stored value can no longer be read.
pub(crate) async fn load_season(
    conn: &Conn,
    app: &App,
    season: &Season,
    now: Instant,
) -> Result<LoadedSeason, Refusal> {
    let key = season.key();
    let policy = app.rules_cache.get_or_parse(season)?;
    // Sent together: the round trip costs more than the answers.
    let (players, weeks, games, log, told, adjustments) = try_join!(
        store::players::list(conn, key),
        store::weeks::list(conn, key),
        store::games::list(conn, key, None),
        store::painting::find_log(conn, key, None),
        store::players::list_absences(conn, key),
        store::adjustments::list(conn, key),
    )?;
    let games = settle(games, now);
    let (painted, late_lists) = load_lists(
        conn,
        &app.catalogue_cache,
        season,
        (&weeks, &players),
        &policy.painting,
        &log,
    )
    .await?;
    let player_facts: Vec<PlayerFact> = players.iter().filter_map(Player::fact).collect();
    let game_facts = game_facts(&games, &weeks)?;
    let facts = SeasonFacts {
        scoring: policy.scoring.clone(),
        painting: policy.painting.clone(),
        tie_breaks: policy.tie_breaks.clone(),
        caps: weeks.iter().map(|week| (week.week, week.cap)).collect(),
        absences: find_absences(told, &paired_weeks(&weeks), &player_facts, &game_facts),
        players: player_facts,
        games: game_facts,
        late_lists,
        painted,
        adjustments,
    };
    Ok(LoadedSeason {
        facts,
        per_week: policy.rounds.per_week(),
        players,
        weeks,
        games,
        now,
    })
}

impl LoadedSeason {
    /// Loads games, weeks and absences anew, after a round was published: nothing else has changed.
    ///
    /// # Errors
    /// As [`load_season`].
    pub async fn reload_games(&mut self, conn: &Conn, season: &Season) -> Result<(), Refusal> {
        let key = season.key();
        let (weeks, games, told) = try_join!(
            store::weeks::list(conn, key),
            store::games::list(conn, key, None),
            store::players::list_absences(conn, key),
        )?;
        self.weeks = weeks;
        self.games = settle(games, self.now);
        self.facts.games = game_facts(&self.games, &self.weeks)?;
        let paired = paired_weeks(&self.weeks);
        self.facts.absences = find_absences(told, &paired, &self.facts.players, &self.facts.games);
        Ok(())
    }
}

/// Results that nobody disputed in time count as confirmed.
fn settle(mut games: Vec<GameRow>, now: Instant) -> Vec<GameRow> {
    for game in &mut games {
        game.slip = std::mem::replace(&mut game.slip, Slip::Awaited).settle(now);
    }
    games
}

fn paired_weeks(weeks: &[Week]) -> BTreeSet<WeekNo> {
    let paired = weeks.iter().filter(|week| week.facts.paired_at.is_some());
    paired.map(|week| week.week).collect()
}

fn game_facts(games: &[GameRow], weeks: &[Week]) -> Result<Vec<GameFact>, Refusal> {
    let mut harder = BTreeMap::new();
    for week in weeks {
        harder.insert(
            week.week,
            parse_sheet(week)?.and_then(|sheet| sheet.harder_role()),
        );
    }
    let fact = |game: &GameRow| GameFact {
        game: game.id,
        week: game.week,
        fixture: match &game.meeting {
            None => Fixture::Bye(game.first),
            Some(meeting) => {
                let settled = game.slip.settled();
                Fixture::Game {
                    players: PerSide {
                        first: game.first,
                        second: meeting.second,
                    },
                    harder: harder
                        .get(&game.week)
                        .copied()
                        .flatten()
                        .map(GameRole::first_side),
                    outcome: settled.map(|settled| settled.outcome.clone()),
                    ruling: settled.and_then(|settled| settled.ruling),
                }
            }
        },
        version: game.version,
    };
    Ok(games.iter().map(fact).collect())
}

/// Painting and lateness follow from the opened lists alone.
async fn load_lists(
    conn: &Conn,
    catalogue_cache: &CatalogueCache,
    season: &Season,
    (weeks, players): (&[Week], &[Player]),
    painting: &Painting,
    log: &PaintingLog,
) -> Result<(Vec<PaintedWeek>, Vec<LateList>), Refusal> {
    let (mut painted, mut late) = (Vec::new(), Vec::new());
    let open: Vec<&Week> = weeks
        .iter()
        .filter(|week| week.facts.lists_opened_at.is_some())
        .collect();
    let key = season.key();
    let find = |week: &&Week| store::lists::list_sealed(conn, key.week(week.week));
    let lists = try_join_all(open.iter().map(find)).await?;
    for (week, lists) in open.into_iter().zip(lists) {
        for sealed in lists {
            let player = sealed.player;
            if !is_list_open(weeks, players, (week.week, player)) {
                continue;
            }
            if sealed.late {
                let due = week.facts.lists_due_at;
                late.push(LateList::new(player, week.week, due, sealed.sealed_at));
            }
            let number = sealed.catalogue_number;
            let find = catalogue_cache.get_or_load(conn, season.club, season.catalogue, number);
            let catalogue = find.await?;
            let list = ArmyList::try_from(sealed.list)
                .map_err(|faults| Refusal::Internal(format!("a sealed list: {faults:?}")))?;
            let units = listed_units(&list, &catalogue);
            painted.push(painted_week(painting, player, week.week, &units, log));
        }
    }
    Ok((painted, late))
}
