//! API: statistics of the games, and awards.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::App;
use app::standings::{MIN_GAMES, SeasonAwards, SeasonStatistics};
use document::table::statistics::{AwardedDocument, RankHistoryDocument, TallyDocument};
use league::standings::Tally;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

use super::games::WeekQuery;
use crate::authentication::MaybeSignedIn;
use crate::paths::SeasonPath;
use crate::problem::ProblemResponses;
use crate::query_parameters::Query;
use crate::response::{ApiResult, Versioned};

/// Games counted by what they have in common.
#[derive(Serialize, ToSchema)]
pub struct StatisticsView {
    /// The season's version that they belong to; also the `ETag`.
    version: i64,
    /// Last week that counts.
    as_of: u8,
    /// Fewest games of which a share is said.
    fewest_games: u32,
    /// By faction; games between two armies of one faction are left out.
    factions: Vec<TallyDocument>,
    /// By the role of the first leg, where the scenario has roles.
    roles: Vec<TallyDocument>,
    /// By scenario, as the side named first saw it: the attacker where there are roles.
    scenarios: Vec<TallyDocument>,
    /// Rank after every week.
    ranks: Vec<RankHistoryDocument>,
    /// The opponents of everybody.
    met: Vec<MetView>,
}

/// Whom a player has met.
#[derive(Serialize, ToSchema)]
pub struct MetView {
    /// Who.
    player: Uuid,
    /// Week by week.
    opponents: Vec<Uuid>,
}

/// The prizes of a season.
#[derive(Serialize, ToSchema)]
pub struct AwardsView {
    /// The season's version that they belong to; also the `ETag`.
    version: i64,
    /// Last week that counts.
    as_of: u8,
    /// Whether the season has ended, so that nothing changes them but a ruling.
    is_final: bool,
    /// Each with everyone who has the best value.
    awards: Vec<AwardedDocument>,
}

/// Games by faction, role and scenario with their 95 % intervals, ranks over the weeks, opponents
/// met.
#[utoipa::path(tag = "standings", params(SeasonPath, WeekQuery), security((), ("bearer" = [])), responses((status = 200, body = StatisticsView), ProblemResponses))]
#[get("/statistics")]
pub async fn find_statistics(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
    of: Query<WeekQuery>,
) -> ApiResult<Versioned<StatisticsView>> {
    let season = path.key();
    let week = of.week()?;
    let found = app::standings::find_statistics(&app, who.0, season, week).await?;
    Ok(statistics_view(&found))
}

fn statistics_view(found: &SeasonStatistics) -> Versioned<StatisticsView> {
    let tallies = |tallies: &[Tally<String>]| tallies.iter().map(Into::into).collect();
    let met = found.met.iter().map(|(player, opponents)| MetView {
        player: player.0,
        opponents: opponents.iter().map(|opponent| opponent.0).collect(),
    });
    Versioned {
        version: found.version,
        view: StatisticsView {
            version: found.version,
            as_of: found.as_of.number(),
            fewest_games: MIN_GAMES,
            factions: tallies(&found.factions),
            roles: tallies(&found.roles),
            scenarios: tallies(&found.scenarios),
            ranks: found.ranks.iter().map(Into::into).collect(),
            met: met.collect(),
        },
    }
}

/// The prizes that the data decide, so far or for good.
#[utoipa::path(tag = "standings", params(SeasonPath), security((), ("bearer" = [])), responses((status = 200, body = AwardsView), ProblemResponses))]
#[get("/awards")]
pub async fn list_awards(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<Versioned<AwardsView>> {
    let season = path.key();
    let found = app::standings::list_awards(&app, who.0, season).await?;
    Ok(awards_view(&found))
}

fn awards_view(found: &SeasonAwards) -> Versioned<AwardsView> {
    Versioned {
        version: found.version,
        view: AwardsView {
            version: found.version,
            as_of: found.as_of.number(),
            is_final: found.is_final,
            awards: found.awards.iter().map(Into::into).collect(),
        },
    }
}
