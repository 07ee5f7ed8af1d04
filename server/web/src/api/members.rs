//! The people of a club.

use actix_web::web::{Data, Path};
use actix_web::{delete, get, put, web};
use app::Desk;
use chrono::{DateTime, Utc};
use league::ids::{AccountId, ClubId};
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::clubs::{InClub, RoleWord};
use crate::answer::{Answer, Done};
use crate::body::Json;
use crate::problem::Problems;
use crate::who::SignedIn;

/// One person of a club.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct OneMember {
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
#[utoipa::path(tag = "clubs", params(InClub), responses((status = 200, body = Vec<MemberView>), Problems))]
#[get("/clubs/{club}/members")]
pub async fn list_members(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InClub>,
) -> Answer<web::Json<Vec<MemberView>>> {
    let members = app::clubs::list_members(&desk, who.0, path.id()).await?;
    let views = members.into_iter().map(|member| MemberView {
        account: member.account.0,
        name: member.name,
        role: member.role.into(),
        since: member.since,
    });
    Ok(web::Json(views.collect()))
}

/// Give a member another role. It counts from their next request on.
#[utoipa::path(tag = "clubs", params(OneMember), responses((status = 204, description = "Changed"), Problems))]
#[put("/clubs/{club}/members/{account}")]
pub async fn update_member(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneMember>,
    body: Json<RoleBody>,
) -> Answer<Done> {
    let (club, account) = (ClubId(path.club), AccountId(path.account));
    app::clubs::update_member(&desk, who.0, club, account, body.0.role.into()).await?;
    Ok(Done)
}

/// Leave a club, or remove somebody as an owner.
#[utoipa::path(tag = "clubs", params(OneMember), responses((status = 204, description = "Gone"), Problems))]
#[delete("/clubs/{club}/members/{account}")]
pub async fn delete_member(desk: Data<Desk>, who: SignedIn, path: Path<OneMember>) -> Answer<Done> {
    let (club, account) = (ClubId(path.club), AccountId(path.account));
    app::clubs::delete_member(&desk, who.0, club, account).await?;
    Ok(Done)
}
