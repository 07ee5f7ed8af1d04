//! Creating an invitation: a code, which also makes a link. The code is shown once and kept as a digest.

use chrono::Duration;
use document::trail::TrailAct;
use league::club_role::ClubRole;
use league::ids::ClubId;
use league::time::Instant;
use messages::{clubs, refusals};
use store::invitations::Invitation;
use uuid::Uuid;

use crate::access::authorize;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Fault, Reason, Refusal, secret};

/// Most people whom one invitation lets in.
pub const MAX_USES: u16 = 500;
/// Most days that an invitation works.
pub const MAX_DAYS: u16 = 90;

#[derive(Clone, Copy, Debug)]
pub struct CreateInvitation {
    /// As what; nobody is invited as an owner, and only an owner invites officers.
    pub role: ClubRole,
    /// How many people may use the code.
    pub uses: u16,
    /// For how many days.
    pub days: u16,
}

/// The invitation with its code, which is not kept anywhere.
#[derive(Clone, Debug)]
pub struct CreatedInvitation {
    /// Identity, to take it back by.
    pub id: Uuid,
    /// The secret to hand on.
    pub code: String,
    /// Until when it works.
    pub expires_at: Instant,
}

/// # Errors
/// [`Reason::Validation`] for numbers out of range or the role of owner; [`Reason::Forbidden`].
pub async fn create_invitation(
    app: &App,
    actor: Actor,
    club: ClubId,
    command: CreateInvitation,
) -> Result<CreatedInvitation, Refusal> {
    check(command)?;
    let code = secret::random_hex()?;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, required_action(command.role)).await?;
        let now = store::clock::now(&tx).await?;
        let invitation = Invitation {
            id: Uuid::now_v7(),
            club,
            role: command.role,
            uses_left: command.uses,
            expires_at: now + Duration::days(command.days.into()),
        };
        let digest = secret::digest(&code);
        store::invitations::create(&mut tx, &invitation, &digest, actor.account, now).await?;
        let act = TrailAct::CreateInvitation {
            invitation: invitation.id,
            role: command.role.into(),
            uses: command.uses,
        };
        Ok(tx
            .record(OfficersEntry::in_club(club, actor, now, act))
            .await?
            .with(CreatedInvitation {
                id: invitation.id,
                code: code.clone(),
                expires_at: invitation.expires_at,
            }))
    })
    .await
}

/// Whoever makes officers runs the club.
fn required_action(role: ClubRole) -> Action {
    match role {
        ClubRole::Player => Action::Invite,
        ClubRole::Referee | ClubRole::Organiser | ClubRole::Owner => Action::RunClub,
    }
}

fn check(command: CreateInvitation) -> Result<(), Refusal> {
    let mut faults = Vec::new();
    if command.role == ClubRole::Owner {
        faults.push(Fault::new("validation", "/role", clubs::no_invited_owner()));
    }
    for (pointer, actual, limit) in [
        ("/uses", command.uses, MAX_USES),
        ("/days", command.days, MAX_DAYS),
    ] {
        if !(1..=limit).contains(&actual) {
            faults.push(
                Fault::new("validation", pointer, refusals::from_one_to(limit))
                    .with(actual.clamp(1, limit), actual),
            );
        }
    }
    if faults.is_empty() {
        Ok(())
    } else {
        Err(Refusal::faults(
            Reason::Validation,
            clubs::invitation_faults(),
            faults,
        ))
    }
}
