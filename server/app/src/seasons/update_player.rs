//! Changing a player's usual nights, faction or household.

use league::ids::{ClubId, PlayerId, SeasonId};
use league::role::Role;
use league::season::SeasonState;
use serde_json::json;
use store::players::Player;

use super::join_season::{check_faction, check_nights};
use crate::may::may;
use crate::record::Scene;
use crate::{Action, Actor, Desk, Reason, Refusal, words};

/// What to change; what is absent stays.
#[derive(Clone, Debug, Default)]
pub struct UpdatePlayer {
    /// Nights one can usually come.
    pub nights: Option<Vec<String>>,
    /// Key of the faction; by the player only before the start.
    pub faction: Option<String>,
    /// Household, by the organiser: its members do not meet early. Empty text takes it away.
    pub household: Option<String>,
}

/// # Errors
/// [`Reason::Forbidden`] for somebody else's place, [`Reason::SeasonFixed`] for a change of faction
/// after the start, [`Reason::Validation`].
pub async fn update_player(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    id: SeasonId,
    player: PlayerId,
    command: UpdatePlayer,
) -> Result<Player, Refusal> {
    desk.store
        .write(async |conn| {
            let role = may(conn, actor, club, Action::Play).await?;
            let runs = matches!(role, Role::Owner | Role::Organiser);
            let season = store::seasons::lock(conn, club, id).await?;
            let mut player = store::players::find(conn, club, id, player).await?;
            if !runs && (player.account != actor.account || command.household.is_some()) {
                return Err(Refusal::rule(
                    Reason::Forbidden,
                    "Only the organiser may do this.",
                ));
            }
            if let Some(nights) = command.nights {
                check_nights(conn, &season, player.joined_week, &nights).await?;
                player.nights = nights;
            }
            if let Some(faction) = command.faction {
                if season.state != SeasonState::Draft {
                    return Err(Refusal::rule(
                        Reason::SeasonFixed,
                        "The faction is fixed since the season started.",
                    ));
                }
                check_faction(conn, &season, player.joined_week, &faction).await?;
                player.faction = faction;
            }
            if let Some(household) = command.household {
                player.household = household_name(&household)?;
            }
            store::players::update(conn, club, id, &player).await?;
            let now = store::clock::now(conn).await?;
            Scene::in_season(&season, actor, now)
                .tell_officers(conn, "update_player", json!({"player": player.id.0}))
                .await?;
            Ok(player)
        })
        .await
}

fn household_name(text: &str) -> Result<Option<String>, Refusal> {
    if text.is_empty() {
        return Ok(None);
    }
    let name = words::name(text, "/household", "household")?;
    Ok(Some(name.to_string()))
}
