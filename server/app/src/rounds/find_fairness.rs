//! The fairness audit of a season: whether its rounds were fair to everyone, as far as chance allows.

use std::collections::BTreeMap;

use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::pairing::history::audit::{self, audit};
use league::pairing::{Game, NightSet, TableNo};
use league::scenario::ScenarioRoles;
use league::season::SeasonState;
use league::standings::table;
use league::week::WeekNo;
use store::rounds::RoundRow;
use store::seasons::Season;

use super::SeasonFairness;
use super::internal_error::internal_error;
use super::occupied_tables::night_of;
use super::repair_round::drawn_task;
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
    let (as_of, seed) = (loaded.last_paired_week(), seed(season)?);
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

/// The first eight bytes of the commitment.
///
/// # Errors
/// [`Refusal::Internal`] when the commitment of a season that has started is missing or is none.
fn seed(season: &Season) -> Result<u64, Refusal> {
    match &season.seed_commitment {
        // A draft has no rounds to audit: no draw is made from the seed.
        None if season.state == SeasonState::Draft => Ok(0),
        commitment => {
            let bytes = commitment.as_deref().and_then(<[u8]>::first_chunk::<8>);
            let bytes = bytes.ok_or_else(|| internal_error(&"a season without its commitment"))?;
            Ok(u64::from_be_bytes(*bytes))
        }
    }
}

/// The games of every round as they stand.
fn rounds(loaded: &LoadedSeason, drawn: &[RoundRow]) -> Result<Vec<audit::PlayedRound>, Refusal> {
    let mut rounds: BTreeMap<(WeekNo, u8), audit::PlayedRound> = BTreeMap::new();
    for game in &loaded.games {
        let week = loaded.week(game.week);
        let week = week.ok_or_else(|| internal_error(&"a game of a week that is not there"))?;
        let key = (game.week, game.round_no);
        let round = match rounds.entry(key) {
            std::collections::btree_map::Entry::Occupied(known) => known.into_mut(),
            std::collections::btree_map::Entry::Vacant(new) => new.insert(audit::PlayedRound {
                games: Vec::new(),
                byes: Vec::new(),
                roles: parse_sheet(week)?
                    .is_some_and(|it| it.terms().roles != ScenarioRoles::Symmetric),
                nights: nights(drawn, key)?,
            }),
        };
        match &game.meeting {
            Some(meeting) => round.games.push(Game {
                night: night_of(week, meeting)?,
                table: TableNo(meeting.table),
                attacker: game.first,
                defender: meeting.second,
            }),
            None => round.byes.push(game.first),
        }
    }
    Ok(rounds.into_values().collect())
}

/// On which nights everybody could come, as the version that stands was drawn from.
fn nights(
    drawn: &[RoundRow],
    (week, number): (WeekNo, u8),
) -> Result<BTreeMap<PlayerId, NightSet>, Refusal> {
    let stands = drawn.iter().rfind(|round| {
        (round.week, round.number) == (week, number) && round.published_at.is_some()
    });
    let stands = stands.ok_or_else(|| internal_error(&"a game of a round that is not there"))?;
    let contenders = drawn_task(stands)?.contenders.into_iter();
    Ok(contenders.map(|it| (it.player, it.nights)).collect())
}
