//! Creating a club: whoever does it owns it.

use document::trail::TrailAct;
use league::club_role::ClubRole;
use league::ids::ClubId;
use messages::{clubs, refusals};
use store::UniqueConstraint;
use store::clubs::Club;
use uuid::Uuid;

use crate::refusal::map_unique_violation;
use crate::season_change::OfficersEntry;
use crate::{Actor, App, Reason, Refusal, user_text};

const MAX_SLUG_LENGTH: usize = 40;

/// What it takes to found a club.
#[derive(Clone, Debug)]
pub struct CreateClub {
    pub name: String,
    /// Short name in addresses: lower-case letters, digits and hyphens.
    pub slug: String,
}

/// # Errors
/// [`Reason::InvalidName`], [`Reason::Validation`] for the short name, [`Reason::SlugTaken`].
pub async fn create_club(app: &App, actor: Actor, command: CreateClub) -> Result<Club, Refusal> {
    let name = user_text::parse_name(&command.name, "/name", refusals::name_fault)?;
    if !is_slug(&command.slug) {
        return Err(Refusal::fault(
            Reason::Validation,
            "/slug",
            clubs::club_slug_shape(MAX_SLUG_LENGTH),
        ));
    }
    app.write(async |mut tx| {
        let now = store::clock::now(&tx).await?;
        let club = Club {
            id: ClubId(Uuid::now_v7()),
            slug: command.slug.clone(),
            name: name.to_string(),
            founded_at: now,
        };
        map_unique_violation(
            store::clubs::create(&mut tx, &club).await,
            UniqueConstraint::ClubSlug,
            || Refusal::fault(Reason::SlugTaken, "/slug", clubs::club_slug_taken()),
        )?;
        store::clubs::create_member(&mut tx, club.id, actor.account, ClubRole::Owner, now).await?;
        let act = TrailAct::CreateClub {
            name: club.name.clone(),
        };
        Ok(tx
            .record(OfficersEntry::in_club(club.id, actor, now, act))
            .await?
            .with(club))
    })
    .await
}

fn is_slug(text: &str) -> bool {
    (2..=MAX_SLUG_LENGTH).contains(&text.len())
        && text.split('-').all(|part| {
            !part.is_empty()
                && part
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
        })
}
