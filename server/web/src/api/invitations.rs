//! Invitations.

use actix_web::web::{Data, Path};
use actix_web::{post, web};
use app::Desk;
use app::clubs::CreateInvitation;
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::clubs::{ClubView, InClub, RoleWord};
use crate::answer::Answer;
use crate::body::Json;
use crate::problem::Problems;
use crate::who::SignedIn;

/// Whom to invite.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct InvitationBody {
    /// As what.
    role: RoleWord,
    /// How many people may use the code.
    #[schema(example = 20, minimum = 1, maximum = 500)]
    uses: u16,
    /// For how many days.
    #[schema(example = 30, minimum = 1, maximum = 90)]
    days: u16,
}

/// An invitation. The code is shown this once.
#[derive(Serialize, ToSchema)]
pub struct InvitationView {
    /// Hand it on.
    code: String,
    /// It works until then.
    expires_at: DateTime<Utc>,
}

/// A code to be used.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CodeBody {
    /// The code of an invitation.
    code: String,
}

/// Invite people by a code.
#[utoipa::path(tag = "clubs", responses((status = 200, body = InvitationView), Problems))]
#[post("/clubs/{club}/invitations")]
pub async fn create_invitation(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InClub>,
    body: Json<InvitationBody>,
) -> Answer<web::Json<InvitationView>> {
    let InvitationBody { role, uses, days } = body.0;
    let command = CreateInvitation {
        role: role.into(),
        uses,
        days,
    };
    let made = app::clubs::create_invitation(&desk, who.0, path.id(), command).await?;
    Ok(web::Json(InvitationView {
        code: made.code,
        expires_at: made.expires_at,
    }))
}

/// Join a club with a code.
#[utoipa::path(tag = "clubs", responses((status = 200, body = ClubView), Problems))]
#[post("/invitations/accept")]
pub async fn accept_invitation(
    desk: Data<Desk>,
    who: SignedIn,
    body: Json<CodeBody>,
) -> Answer<web::Json<ClubView>> {
    let (club, role) = app::clubs::accept_invitation(&desk, who.0, &body.0.code).await?;
    Ok(web::Json(ClubView::new(club, Some(role))))
}
