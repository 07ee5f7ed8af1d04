//! The fairness audit of a season: whether its rounds were fair to everyone, as far as chance allows.

use std::collections::BTreeMap;

use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::pairing::history::audit::{self, audit};
use league::pairing::{NightKey, NightSet, TableNo};
use league::scenario::ScenarioRoles;
use league::standings::table;
use league::week::WeekNo;
use store::games::GameRow;
use store::rounds::RoundRow;
use store::seasons::Season;
use store::weeks::Week;

use super::SeasonFairness;
use crate::load_season::view_loaded_season;
use crate::loaded_season::{LoadedSeason, parse_sheet};
use crate::work_queue::Permit;
use crate::{App, Refusal, Viewer};

/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_fairness(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<SeasonFairness, Refusal> {
    let (found, loaded, drawn) = app
        .store
        .read(async |conn| {
            let (found, loaded) = view_loaded_season(conn, app, viewer, season).await?;
            let rounds = store::rounds::list(conn, season, None).await?;
            Ok::<_, Refusal>((found, loaded, rounds))
        })
        .await?;
    let version = found.version;
    app.fairness_cache
        .get_or_compute(season, version, &app.analysis_queue, async |permit| {
            compute(&found, loaded, &drawn, permit).await
        })
        .await
}

async fn compute(
    season: &Season,
    loaded: LoadedSeason,
    drawn: &[RoundRow],
    permit: Permit,
) -> Result<SeasonFairness, Refusal> {
    let (as_of, seed) = (loaded.last_paired_week(), seed(season));
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
        audit: permit
            .run_blocking(move || audit(&rounds, &scores, seed))
            .await?,
        handles: handles.collect(),
    })
}

/// The first eight bytes of the commitment; 0 for a draft, which has no rounds.
fn seed(season: &Season) -> u64 {
    // A draft has no commitment yet, and no rounds to audit either.
    let bytes = season.seed_commitment.as_deref().unwrap_or_default();
    let first = bytes.first_chunk::<8>();
    first.map_or(0, |bytes| u64::from_be_bytes(*bytes))
}

/// The games of every round as they stand.
fn rounds(loaded: &LoadedSeason, drawn: &[RoundRow]) -> Result<Vec<audit::PlayedRound>, Refusal> {
    let mut rounds: BTreeMap<(WeekNo, u8), audit::PlayedRound> = BTreeMap::new();
    for game in &loaded.games {
        let Some(week) = loaded.week(game.week) else {
            continue;
        };
        let key = (game.week, game.round_no);
        let round = match rounds.entry(key) {
            std::collections::btree_map::Entry::Occupied(known) => known.into_mut(),
            std::collections::btree_map::Entry::Vacant(new) => new.insert(audit::PlayedRound {
                games: Vec::new(),
                byes: Vec::new(),
                roles: parse_sheet(week)?
                    .is_some_and(|it| it.terms().roles != ScenarioRoles::Symmetric),
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
fn nights(drawn: &[RoundRow], (week, number): (WeekNo, u8)) -> BTreeMap<PlayerId, NightSet> {
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
fn placed(week: &Week, game: &GameRow) -> Option<league::pairing::Game> {
    let meeting = game.meeting.as_ref()?;
    let night = week.nights.iter().position(|it| it.key == meeting.night)?;
    Some(league::pairing::Game {
        night: NightKey::new(u8::try_from(night).ok()?)?,
        table: TableNo(meeting.table),
        attacker: game.first,
        defender: meeting.second,
    })
}
