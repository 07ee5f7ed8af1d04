//! Whether the season's rounds were fair to everyone, as far as chance allows: open to everyone who
//! may see the season.

use std::collections::BTreeMap;

use league::ids::{ClubId, PlayerId, SeasonId};
use league::pairing::history::audit::{self, Audit, audit};
use league::pairing::{NightKey, Nights, TableNo};
use league::scenario::Roles;
use league::standings::table;
use league::week::WeekNo;
use store::games::Game;
use store::rounds::Round;
use store::seasons::Season;
use store::weeks::Week;

use crate::facts::{self, Loaded, sheet};
use crate::seasons::look::look;
use crate::turns::Turn;
use crate::{Desk, Refusal, Viewer};

/// An audit with what it rests on.
#[derive(Clone, Debug)]
pub struct SeasonFairness {
    /// The season's version that it belongs to.
    pub version: i64,
    /// Last week that counts.
    pub as_of: WeekNo,
    /// Seed of the dealt seasons: it follows from the season's commitment, so that nobody chooses it.
    pub seed: u64,
    /// What was found.
    pub audit: Audit,
    /// How everybody is called.
    pub handles: BTreeMap<PlayerId, String>,
}

/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_fairness(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    id: SeasonId,
) -> Result<SeasonFairness, Refusal> {
    let (season, loaded, drawn) = desk
        .store
        .read(async |conn| {
            let season = look(conn, viewer, club, id).await?.season;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &season, now).await?;
            let rounds = store::rounds::list(conn, club, id, None).await?;
            Ok::<_, Refusal>((season, loaded, rounds))
        })
        .await?;
    let version = season.version;
    desk.audits
        .or_reckon(id, version, &desk.reckoning, async |turn| {
            reckon(&season, loaded, &drawn, turn).await
        })
        .await
}

async fn reckon(
    season: &Season,
    loaded: Loaded,
    drawn: &[Round],
    turn: Turn,
) -> Result<SeasonFairness, Refusal> {
    let (as_of, seed) = (loaded.last_paired(), seed(season));
    let rows = table(&loaded.facts, as_of).rows;
    let scores = rows
        .iter()
        .map(|row| (row.player, row.total.get()))
        .collect();
    let rounds = rounds(&loaded, drawn)?;
    let handles = loaded.players.into_iter().map(|it| (it.id, it.handle));
    Ok(SeasonFairness {
        version: season.version,
        as_of,
        seed,
        audit: turn.aside(move || audit(&rounds, &scores, seed)).await?,
        handles: handles.collect(),
    })
}

/// The first eight bytes of the commitment; 0 for a draft, which has no rounds.
fn seed(season: &Season) -> u64 {
    let bytes = season.seed_commitment.as_deref().unwrap_or_default();
    let first = bytes.first_chunk::<8>();
    first.map_or(0, |bytes| u64::from_be_bytes(*bytes))
}

/// The games of every round as they stand.
fn rounds(loaded: &Loaded, drawn: &[Round]) -> Result<Vec<audit::Round>, Refusal> {
    let mut rounds: BTreeMap<(WeekNo, u8), audit::Round> = BTreeMap::new();
    for game in &loaded.games {
        let Some(week) = loaded.week(game.week) else {
            continue;
        };
        let key = (game.week, game.round_no);
        let round = match rounds.entry(key) {
            std::collections::btree_map::Entry::Occupied(known) => known.into_mut(),
            std::collections::btree_map::Entry::Vacant(new) => new.insert(audit::Round {
                games: Vec::new(),
                byes: Vec::new(),
                roles: sheet(week)?.is_some_and(|it| it.terms().roles != Roles::Symmetric),
                nights: nights(drawn, key),
            }),
        };
        match placed(week, game) {
            Some(placed) => round.games.push(placed),
            None => round.byes.push(game.first),
        }
    }
    Ok(rounds.into_values().collect())
}

/// On which nights everybody could come, as the version that stands was drawn from.
fn nights(drawn: &[Round], (week, number): (WeekNo, u8)) -> BTreeMap<PlayerId, Nights> {
    let stands = drawn.iter().rfind(|round| {
        (round.week, round.number) == (week, number) && round.published_at.is_some()
    });
    let contenders = stands.map(|round| round.task.contenders.iter());
    contenders
        .into_iter()
        .flatten()
        .map(|it| {
            let nights = it.nights.iter().filter_map(|&night| NightKey::new(night));
            (PlayerId(it.player), nights.collect())
        })
        .collect()
}

/// A game at its night and table; `None` for a bye.
fn placed(week: &Week, game: &Game) -> Option<league::pairing::Game> {
    let meeting = game.meeting.as_ref()?;
    let night = week.nights.iter().position(|it| it.key == meeting.night)?;
    Some(league::pairing::Game {
        night: NightKey::new(u8::try_from(night).ok()?)?,
        table: TableNo(meeting.table),
        attacker: game.first,
        defender: meeting.second,
    })
}
