//! API: clubs.

use actix_web::web::{Data, Path};
use actix_web::{get, post, web};
use app::App;
use app::clubs::Club;
use app::clubs::CreateClub;
use league::club_role::ClubRole;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::paths::ClubPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, Created};

/// What it takes to found a club.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClubBody {
    /// Name.
    #[schema(
        example = "Lamplit Ford gaming circle",
        min_length = 1,
        max_length = 60
    )]
    name: String,
    /// Short name in addresses.
    #[schema(
        example = "lamplit-ford",
        pattern = "^[a-z0-9]+(-[a-z0-9]+)*$",
        min_length = 2,
        max_length = 40
    )]
    slug: String,
}

/// A role in a club.
#[derive(Clone, Copy, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[schema(example = "player")]
pub enum RoleWord {
    /// Runs the club.
    Owner,
    /// Runs seasons.
    Organiser,
    /// Rules on disputes and checks painting.
    Referee,
    /// Plays.
    Player,
}

impl From<ClubRole> for RoleWord {
    fn from(role: ClubRole) -> Self {
        match role {
            ClubRole::Owner => Self::Owner,
            ClubRole::Organiser => Self::Organiser,
            ClubRole::Referee => Self::Referee,
            ClubRole::Player => Self::Player,
        }
    }
}

impl From<RoleWord> for ClubRole {
    fn from(word: RoleWord) -> Self {
        match word {
            RoleWord::Owner => Self::Owner,
            RoleWord::Organiser => Self::Organiser,
            RoleWord::Referee => Self::Referee,
            RoleWord::Player => Self::Player,
        }
    }
}

/// A club.
#[derive(Serialize, ToSchema)]
pub struct ClubView {
    /// Identity.
    id: Uuid,
    /// Short name in addresses.
    slug: String,
    /// Name.
    name: String,
    /// What you are in it, if anything.
    #[serde(skip_serializing_if = "Option::is_none")]
    role: Option<RoleWord>,
}

impl ClubView {
    /// A club as seen by somebody of this role.
    pub fn new(club: Club, role: Option<ClubRole>) -> Self {
        Self {
            id: club.id.0,
            slug: club.slug,
            name: club.name,
            role: role.map(RoleWord::from),
        }
    }
}

/// Found a club. You own it.
#[utoipa::path(tag = "clubs", responses((status = 201, body = ClubView), ProblemResponses))]
#[post("/clubs")]
pub async fn create_club(
    app: Data<App>,
    who: SignedIn,
    body: Json<ClubBody>,
) -> ApiResult<Created<ClubView>> {
    let ClubBody { name, slug } = body.0;
    let club = app::clubs::create_club(&app, who.0, CreateClub { name, slug }).await?;
    let location = format!("/api/v1/clubs/{}", club.id);
    Ok(Created {
        location,
        view: ClubView::new(club, Some(ClubRole::Owner)),
    })
}

/// A club.
#[utoipa::path(tag = "clubs", params(ClubPath), security(()), responses((status = 200, body = ClubView), ProblemResponses))]
#[get("/clubs/{club}")]
pub async fn find_club(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<ClubPath>,
) -> ApiResult<web::Json<ClubView>> {
    let (club, role) = app::clubs::find_club(&app, who.0, path.id()).await?;
    Ok(web::Json(ClubView::new(club, role)))
}
