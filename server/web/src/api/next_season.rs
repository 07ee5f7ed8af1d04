//! API: the next season, created from this one.

use actix_web::post;
use actix_web::web::{Data, Path};
use app::seasons::{Carry, CreateSeasonFrom, LeftOut, NextSeason};
use app::{App, Refusal};
use chrono::NaiveDate;
use document::civil;
use document::season::policy::PolicyDocument;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::addresses;
use super::players::PlayerView;
use super::seasons::SeasonView;
use crate::authentication::SignedIn;
use crate::body::Json;
use crate::paths::SeasonPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, Created};

/// What it takes to start the next season from this one.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NextSeasonBody {
    /// Name of the next season.
    #[schema(example = "Winter at the ford", min_length = 1, max_length = 60)]
    name: String,
    /// The day on which its first week is announced.
    #[serde(deserialize_with = "civil::deserialize_date")]
    #[schema(example = "2026-09-01")]
    first_day: NaiveDate,
    /// Whether nights and deadlines may move to other days of the week. Without it the first day must
    /// have the weekday that it had in this season.
    #[serde(default)]
    other_weekdays: bool,
    /// The rules as a whole; absent, those of this season.
    #[serde(default)]
    policy: Option<PolicyDocument>,
    /// Whether the scenario sheets come along, with their reveals.
    #[serde(default)]
    scenarios: bool,
    /// Who comes along, and with what.
    #[serde(default)]
    carry: CarryWord,
}

/// Who comes along into the next season. Roles belong to the club and stay as they are.
#[derive(Clone, Copy, Default, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum CarryWord {
    /// Everybody joins for themselves.
    #[default]
    Nobody,
    /// Everybody who plays to the end has a place, with handle, faction, nights and household, and may
    /// withdraw from it.
    Players,
    /// They also bring their units; a painted unit stays painted. Once this season has ended.
    PlayersWithCollections,
}

impl From<CarryWord> for Carry {
    fn from(word: CarryWord) -> Self {
        match word {
            CarryWord::Nobody => Self::Nobody,
            CarryWord::Players => Self::Players,
            CarryWord::PlayersWithCollections => Self::PlayersWithCollections,
        }
    }
}

/// A new draft, and who came along.
#[derive(Serialize, ToSchema)]
pub struct NextSeasonView {
    /// The draft; everything in it may still change.
    season: SeasonView,
    /// Who came along.
    players: Vec<PlayerView>,
    /// Who did not.
    left_out: Vec<LeftOutView>,
}

/// Somebody who did not come along.
#[derive(Serialize, ToSchema)]
pub struct LeftOutView {
    /// Handle in this season.
    handle: String,
    /// Why.
    why: LeftOutWord,
}

/// Why somebody did not come along.
#[derive(Clone, Copy, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum LeftOutWord {
    /// Withdrew from this season.
    Withdrew,
    /// Is no member of the club any more.
    LeftTheClub,
    /// The newest version of the catalogue does not have the faction.
    FactionGone,
}

impl From<LeftOut> for LeftOutWord {
    fn from(why: LeftOut) -> Self {
        match why {
            LeftOut::Withdrew => Self::Withdrew,
            LeftOut::LeftTheClub => Self::LeftTheClub,
            LeftOut::FactionGone => Self::FactionGone,
        }
    }
}

impl TryFrom<NextSeason> for NextSeasonView {
    type Error = Refusal;

    fn try_from(next: NextSeason) -> Result<Self, Refusal> {
        let left_out = next.people.left_out.into_iter();
        Ok(Self {
            season: next.season.try_into()?,
            players: next
                .people
                .players
                .into_iter()
                .map(PlayerView::from)
                .collect(),
            left_out: left_out
                .map(|(handle, why)| LeftOutView {
                    handle,
                    why: why.into(),
                })
                .collect(),
        })
    }
}

/// Start the next season from this one: the same zone, caps, rhythm, nights, places and rules on new
/// days, with the newest version of the catalogue. It is a draft, and draws its own seed when it is
/// started.
#[utoipa::path(tag = "seasons", params(SeasonPath), responses((status = 201, body = NextSeasonView), ProblemResponses))]
#[post("/next")]
pub async fn create_season_from(
    app: Data<App>,
    who: SignedIn,
    path: Path<SeasonPath>,
    body: Json<NextSeasonBody>,
) -> ApiResult<Created<NextSeasonView>> {
    let season = path.key();
    let body = body.0;
    let command = CreateSeasonFrom {
        name: body.name,
        first_day: body.first_day,
        other_weekdays: body.other_weekdays,
        policy: body.policy,
        scenarios: body.scenarios,
        carry: body.carry.into(),
    };
    let next = app::seasons::create_season_from(&app, who.0, season, command).await?;
    Ok(Created {
        location: addresses::season(next.season.key()),
        view: next.try_into()?,
    })
}
