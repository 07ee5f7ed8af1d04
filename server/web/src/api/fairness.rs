//! API: the fairness audit of a season's rounds.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::App;
use app::rounds::SeasonFairness;
use document::rounds::fairness::FairnessFindingDocument;
use league::ids::PlayerId;
use league::pairing::history::audit::RANDOM_SEASONS;
use serde::Serialize;
use utoipa::ToSchema;

use crate::authentication::MaybeSignedIn;
use crate::paths::SeasonPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, Versioned};

/// The rounds of a season against chance.
#[derive(Serialize, ToSchema)]
pub struct FairnessView {
    /// The season's version that it belongs to; also the `ETag`.
    version: i64,
    /// Last week that counts.
    as_of: u8,
    /// Seed of the dealt seasons, in hexadecimal: the first digits of the season's commitment.
    #[schema(example = "9f86d081884c7d65")]
    seed: String,
    /// Seasons dealt at random.
    seasons: u32,
    /// Tests made at once.
    tests: u32,
    /// The correction for their number.
    #[schema(example = "bonferroni")]
    correction: &'static str,
    /// All of it in sentences.
    sentences: Vec<String>,
    /// Each player's value on each measure.
    findings: Vec<FairnessFindingDocument>,
}

impl From<SeasonFairness> for FairnessView {
    fn from(found: SeasonFairness) -> Self {
        // The audit is of these very players.
        let called = |player: PlayerId| found.handles.get(&player).cloned().unwrap_or_default();
        let findings = found.audit.findings.iter();
        Self {
            version: found.version,
            as_of: found.as_of.number(),
            seed: format!("{:016x}", found.seed),
            seasons: RANDOM_SEASONS,
            tests: found.audit.tests,
            correction: "bonferroni",
            sentences: found
                .audit
                .messages()
                .map(|message| message.to_string())
                .into(),
            findings: findings
                .map(|it| FairnessFindingDocument::new(it, &it.message(&called)))
                .collect(),
        }
    }
}

/// Opponents' strength, roles, tables, byes and nights of every player against what chance allows.
#[utoipa::path(tag = "pairing", params(SeasonPath), security((), ("bearer" = [])), responses((status = 200, body = FairnessView), ProblemResponses))]
#[get("/fairness")]
pub async fn find_fairness(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<Versioned<FairnessView>> {
    let season = path.key();
    let found = app::rounds::find_fairness(&app, who.0, season).await?;
    Ok(Versioned {
        version: found.version,
        view: found.into(),
    })
}
