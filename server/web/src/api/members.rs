//! API: the members of a club.

use actix_web::web::{Data, Path};
use actix_web::{delete, get, put, web};
use app::App;
use chrono::{DateTime, Utc};
use league::ids::{AccountId, ClubId};
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::clubs::RoleWord;
use crate::authentication::SignedIn;
use crate::body::Json;
use crate::paths::ClubPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, NoContent};

/// One person of a club.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct MemberPath {
    /// The club.
    club: Uuid,
    /// The person's account.
    account: Uuid,
}

/// A new role.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RoleBody {
    /// The role.
    role: RoleWord,
}

/// A member.
#[derive(Serialize, ToSchema)]
pub struct MemberView {
    /// The person's account.
    account: Uuid,
    /// Name.
    name: String,
    /// Role.
    role: RoleWord,
    /// Since when.
    since: DateTime<Utc>,
}

/// The people of a club, by name.
#[utoipa::path(tag = "clubs", params(ClubPath), responses((status = 200, body = Vec<MemberView>), ProblemResponses))]
#[get("/clubs/{club}/members")]
pub async fn list_members(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
) -> ApiResult<web::Json<Vec<MemberView>>> {
    let members = app::clubs::list_members(&app, who.0, path.id()).await?;
    let views = members.into_iter().map(|member| MemberView {
        account: member.account.0,
        name: member.name,
        role: member.role.into(),
        since: member.since,
    });
    Ok(web::Json(views.collect()))
}

/// Give a member another role. It counts from their next request on.
#[utoipa::path(tag = "clubs", params(MemberPath), responses((status = 204, description = "Changed"), ProblemResponses))]
#[put("/clubs/{club}/members/{account}")]
pub async fn update_member(
    app: Data<App>,
    who: SignedIn,
    path: Path<MemberPath>,
    body: Json<RoleBody>,
) -> ApiResult<NoContent> {
    let (club, account) = (ClubId(path.club), AccountId(path.account));
    app::clubs::update_member(&app, who.0, club, account, body.0.role.into()).await?;
    Ok(NoContent)
}

/// Leave a club, or remove somebody as an owner.
#[utoipa::path(tag = "clubs", params(MemberPath), responses((status = 204, description = "Gone"), ProblemResponses))]
#[delete("/clubs/{club}/members/{account}")]
pub async fn delete_member(
    app: Data<App>,
    who: SignedIn,
    path: Path<MemberPath>,
) -> ApiResult<NoContent> {
    let (club, account) = (ClubId(path.club), AccountId(path.account));
    app::clubs::delete_member(&app, who.0, club, account).await?;
    Ok(NoContent)
}
