//! The facts of a season as the rules need them: loaded once, in one place, for pairing, standings
//! and ledger alike.

use std::collections::BTreeMap;

use futures_util::future::try_join_all;
use league::catalogue::Catalogue;
use league::ids::PlayerId;
use league::lists::ArmyList;
use league::lists::facts::lines;
use league::painting::{ListedUnit, PaintedWeek, Painting, PaintingLog, painted_week};
use league::pairing::history::past::RoundKey;
use league::result::Slip;
use league::scenario::ScenarioSheet;
use league::side::{Both, Role, Side};
use league::standings::{Absence, Fixture, GameFact, LateList, PlayerFact, SeasonFacts};
use league::time::Instant;
use league::week::WeekNo;
use store::Conn;
use store::games::Game;
use store::players::{LeftAfter, Player};
use store::seasons::Season;
use store::weeks::Week;
use tokio::try_join;

use crate::catalogues::Library;
use crate::lists::is_open;
use crate::{Desk, Refusal};

/// A season with all that was read to make its facts.
pub(crate) struct Loaded {
    pub facts: SeasonFacts,
    pub players: Vec<Player>,
    pub weeks: Vec<Week>,
    pub games: Vec<Game>,
    /// Rounds of a week, as the season wants.
    pub per_week: u8,
    /// When it stood so.
    pub now: Instant,
}

/// Loads a season as it stands at `now`: silence has confirmed what it confirms.
///
/// # Errors
/// [`Refusal::Broken`] when something that was kept can no longer be read.
pub(crate) async fn load(
    conn: &Conn,
    desk: &Desk,
    season: &Season,
    now: Instant,
) -> Result<Loaded, Refusal> {
    let (club, id) = season.key();
    let policy = desk.rulebook.read(season)?;
    // All at once: to go and ask costs more than the answers.
    let (players, weeks, mut games, log, told, adjustments) = try_join!(
        store::players::list(conn, club, id),
        store::weeks::list(conn, club, id),
        store::games::list(conn, club, id, None),
        store::painting::find_log(conn, club, id, None),
        store::players::list_absences(conn, club, id),
        store::adjustments::list(conn, club, id),
    )?;
    for game in &mut games {
        game.slip = std::mem::replace(&mut game.slip, Slip::Awaited).settle(now);
    }
    let (painted, late_lists) = load_lists(
        conn,
        &desk.library,
        season,
        (&weeks, &players),
        &policy.painting,
        &log,
    )
    .await?;
    let facts = SeasonFacts {
        scoring: policy.scoring.clone(),
        painting: policy.painting.clone(),
        tie_breaks: policy.tie_breaks.clone(),
        caps: weeks.iter().map(|week| (week.week, week.cap)).collect(),
        players: players.iter().filter_map(player_fact).collect(),
        games: game_facts(&games, &weeks)?,
        absences: absences(told, &weeks, &players, &games),
        late_lists,
        painted,
        adjustments,
    };
    Ok(Loaded {
        facts,
        per_week: policy.rounds.per_week(),
        players,
        weeks,
        games,
        now,
    })
}

fn player_fact(player: &Player) -> Option<PlayerFact> {
    let left = match player.left_after {
        None => None,
        Some(LeftAfter::NoWeek) => return None,
        Some(LeftAfter::Week(last)) => last.next(),
    };
    Some(PlayerFact {
        player: player.id,
        joined: player.joined_week,
        left,
    })
}

/// An absence counts once the week's round is published without the player; who spoke after the
/// proposal is in a game of it, and its slip says what becomes of that.
fn absences(
    told: Vec<(PlayerId, WeekNo)>,
    weeks: &[Week],
    players: &[Player],
    games: &[Game],
) -> Vec<Absence> {
    let is_paired = |no| {
        weeks
            .iter()
            .any(|week| week.week == no && week.facts.paired_at.is_some())
    };
    let plays = |id, week| {
        players
            .iter()
            .any(|player| player.id == id && player.plays_in(week))
    };
    let meets = |id, week| games.iter().any(|game| game.week == week && game.has(id));
    told.into_iter()
        .filter(|&(player, week)| is_paired(week) && plays(player, week) && !meets(player, week))
        .map(|(player, week)| Absence { player, week })
        .collect()
}

fn game_facts(games: &[Game], weeks: &[Week]) -> Result<Vec<GameFact>, Refusal> {
    let mut harder = BTreeMap::new();
    for week in weeks {
        harder.insert(
            week.week,
            sheet(week)?.and_then(|sheet| sheet.harder_role()),
        );
    }
    let fact = |game: &Game| GameFact {
        game: game.id,
        week: game.week,
        fixture: match &game.meeting {
            None => Fixture::Bye(game.first),
            Some(meeting) => {
                let settled = game.slip.settled();
                Fixture::Game {
                    players: Both {
                        first: game.first,
                        second: meeting.second,
                    },
                    harder: harder
                        .get(&game.week)
                        .copied()
                        .flatten()
                        .map(|role| match role {
                            Role::Attacker => Side::First,
                            Role::Defender => Side::Second,
                        }),
                    outcome: settled.map(|settled| settled.outcome.clone()),
                    ruling: settled.and_then(|settled| settled.ruling),
                }
            }
        },
        version: game.version,
    };
    Ok(games.iter().map(fact).collect())
}

/// The scenario sheet of a week.
///
/// # Errors
/// [`Refusal::Broken`] when it can no longer be read.
pub(crate) fn sheet(week: &Week) -> Result<Option<ScenarioSheet>, Refusal> {
    let Some(document) = week.sheet.clone() else {
        return Ok(None);
    };
    ScenarioSheet::try_from(document)
        .map(Some)
        .map_err(|faults| Refusal::Broken(format!("sheet of week {}: {faults:?}", week.week)))
}

/// Painting and lateness follow from the opened lists alone.
async fn load_lists(
    conn: &Conn,
    library: &Library,
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
    let (club, id) = season.key();
    let find = |week: &&Week| store::lists::list_handed_in(conn, club, id, week.week);
    let lists = try_join_all(open.iter().map(find)).await?;
    for (week, lists) in open.into_iter().zip(lists) {
        for sealed in lists {
            let player = sealed.player;
            if !is_open(weeks, players, (week.week, player)) {
                continue;
            }
            if sealed.late {
                let seconds = (sealed.sealed_at - week.facts.lists_due_at).num_seconds();
                let seconds = u32::try_from(seconds).unwrap_or(0);
                late.push(LateList {
                    player,
                    week: week.week,
                    seconds,
                });
            }
            let number = sealed.catalogue_number;
            let find = library.find(conn, club, season.catalogue, number);
            let catalogue = find.await?;
            let list = ArmyList::try_from(sealed.list)
                .map_err(|faults| Refusal::Broken(format!("a sealed list: {faults:?}")))?;
            let units = listed(&list, &catalogue);
            painted.push(painted_week(painting, player, week.week, &units, log));
        }
    }
    Ok((painted, late))
}

/// The units of a list with their points.
pub(crate) fn listed(list: &ArmyList, catalogue: &Catalogue) -> Vec<ListedUnit> {
    lines(list, catalogue)
        .into_iter()
        .map(|line| ListedUnit {
            unit: line.entry.key.clone(),
            points: line.points,
            models: line.entry.models,
        })
        .collect()
}

impl Loaded {
    /// The last week that is paired; the first where none is.
    pub fn last_paired(&self) -> WeekNo {
        let paired = self.paired().map(|week| week.week);
        paired.max().unwrap_or(WeekNo::FIRST)
    }

    /// Rounds still to come; a closed week has no more.
    pub fn rounds_to_come(&self) -> u8 {
        let open = self
            .weeks
            .iter()
            .filter(|week| week.facts.closed_at.is_none());
        let left = open.map(|week| self.per_week.saturating_sub(self.rounds_of(week.week)));
        left.fold(0, u8::saturating_add)
    }

    /// Rounds after this one, when every week gets as many as the season wants.
    pub fn rounds_after(&self, key: RoundKey) -> u8 {
        let later = self.weeks.iter().filter(|week| week.week > key.week);
        let later = later.map(|_| self.per_week);
        later.fold(self.per_week.saturating_sub(key.number), u8::saturating_add)
    }

    /// Rounds of a week that are published.
    fn rounds_of(&self, week: WeekNo) -> u8 {
        let games = self.games.iter().filter(|game| game.week == week);
        games.map(|game| game.round_no).max().unwrap_or(0)
    }

    fn paired(&self) -> impl Iterator<Item = &Week> {
        self.weeks
            .iter()
            .filter(|week| week.facts.paired_at.is_some())
    }

    /// The week asked for, or the last that is paired.
    ///
    /// # Errors
    /// [`Refusal::NotFound`] for a week that the season does not have.
    pub fn as_of(&self, week: Option<WeekNo>) -> Result<WeekNo, Refusal> {
        match week {
            None => Ok(self.last_paired()),
            Some(week) => Ok(self.week(week).ok_or(Refusal::NotFound)?.week),
        }
    }

    /// The week, if the season has it.
    pub fn week(&self, week: WeekNo) -> Option<&Week> {
        self.weeks.iter().find(|known| known.week == week)
    }
}
