//! API: invitations.

use actix_web::web::{Data, Path};
use actix_web::{delete, get, post, web};
use app::App;
use app::clubs::CreateInvitation;
use chrono::{DateTime, Utc};
use league::ids::ClubId;
use serde::{Deserialize, Serialize};
use utoipa::openapi::schema::{ObjectBuilder, Schema, Type};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::clubs::{ClubView, RoleWord};
use crate::authentication::SignedIn;
use crate::body::Json;
use crate::paths::ClubPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, NoContent};

/// Whom to invite.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct InvitationBody {
    /// As what; nobody is invited as an owner.
    #[schema(schema_with = invited_roles)]
    role: RoleWord,
    /// How many people may use the code.
    #[schema(example = 20, minimum = 1, maximum = 500)]
    uses: u16,
    /// For how many days.
    #[schema(example = 30, minimum = 1, maximum = 90)]
    days: u16,
}

fn invited_roles() -> Schema {
    ObjectBuilder::new()
        .schema_type(Type::String)
        .enum_values(Some(["organiser", "referee", "player"]))
        .into()
}

/// An invitation. The code is shown this once.
#[derive(Serialize, ToSchema)]
pub struct InvitationView {
    /// Identity, to take it back by.
    id: Uuid,
    /// Hand it on.
    code: String,
    /// It works until then.
    expires_at: DateTime<Utc>,
}

/// An invitation that still works. Its code is not kept.
#[derive(Serialize, ToSchema)]
pub struct OpenInvitationView {
    /// Identity.
    id: Uuid,
    /// As what it invites.
    role: RoleWord,
    /// How many more people may use it.
    uses_left: u16,
    /// It works until then.
    expires_at: DateTime<Utc>,
}

/// One invitation of a club.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct InvitationPath {
    /// The club.
    club: Uuid,
    /// The invitation.
    invitation: Uuid,
}

/// A code to be used.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CodeBody {
    /// The code of an invitation.
    code: String,
}

/// Invite people by a code.
#[utoipa::path(tag = "clubs", params(ClubPath), responses((status = 200, body = InvitationView), ProblemResponses))]
#[post("/clubs/{club}/invitations")]
pub async fn create_invitation(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
    body: Json<InvitationBody>,
) -> ApiResult<web::Json<InvitationView>> {
    let InvitationBody { role, uses, days } = body.0;
    let command = CreateInvitation {
        role: role.into(),
        uses,
        days,
    };
    let made = app::clubs::create_invitation(&app, who.0, path.id(), command).await?;
    Ok(web::Json(InvitationView {
        id: made.id,
        code: made.code,
        expires_at: made.expires_at,
    }))
}

/// The invitations that still work, without their codes.
#[utoipa::path(tag = "clubs", params(ClubPath), responses((status = 200, body = Vec<OpenInvitationView>), ProblemResponses))]
#[get("/clubs/{club}/invitations")]
pub async fn list_invitations(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
) -> ApiResult<web::Json<Vec<OpenInvitationView>>> {
    let open = app::clubs::list_invitations(&app, who.0, path.id()).await?;
    let views = open.into_iter().map(|invitation| OpenInvitationView {
        id: invitation.id,
        role: invitation.role.into(),
        uses_left: invitation.uses_left,
        expires_at: invitation.expires_at,
    });
    Ok(web::Json(views.collect()))
}

/// Take an invitation back. Its code no longer works.
#[utoipa::path(tag = "clubs", params(InvitationPath), responses((status = 204, description = "Gone"), ProblemResponses))]
#[delete("/clubs/{club}/invitations/{invitation}")]
pub async fn delete_invitation(
    app: Data<App>,
    who: SignedIn,
    path: Path<InvitationPath>,
) -> ApiResult<NoContent> {
    let club = ClubId(path.club);
    app::clubs::delete_invitation(&app, who.0, club, path.invitation).await?;
    Ok(NoContent)
}

/// Join a club with a code.
#[utoipa::path(tag = "clubs", responses((status = 200, body = ClubView), ProblemResponses))]
#[post("/invitations/accept")]
pub async fn accept_invitation(
    app: Data<App>,
    who: SignedIn,
    body: Json<CodeBody>,
) -> ApiResult<web::Json<ClubView>> {
    let (club, role) = app::clubs::accept_invitation(&app, who.0, &body.0.code).await?;
    Ok(web::Json(ClubView::new(club, Some(role))))
}
