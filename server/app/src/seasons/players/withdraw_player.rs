//! Withdrawing a player: games played stand, and a game already paired is settled like any other.

use document::trail::TrailAct;
use league::club_role::ClubRole;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::season::last_paired_week;
use messages::{refusals, seasons};
use store::Conn;
use store::players::{LeftAfter, Player};

use crate::access::authorize;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal};

/// The player takes part up to and including the last week that is paired, and no further. A list that
/// is still sealed stays so.
///
/// # Errors
/// [`Reason::Forbidden`] for somebody else's place, [`Reason::PlayerLeft`] when done already.
pub async fn withdraw_player(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    player: PlayerId,
) -> Result<Player, Refusal> {
    app.write(async |mut tx| {
        let role = authorize(&mut tx, actor, season.club, Action::Play).await?;
        let season = store::seasons::lock(&mut tx, season).await?;
        let mut player = store::players::find(&tx, season.key(), player).await?;
        let runs = matches!(role, ClubRole::Owner | ClubRole::Organiser);
        if !runs && player.account != actor.account {
            return Err(Refusal::rule(Reason::Forbidden, refusals::organiser_only()));
        }
        if player.left_after.is_some() {
            return Err(Refusal::rule(
                Reason::PlayerLeft,
                seasons::already_withdrawn(),
            ));
        }
        player.left_after = Some(last_week(&mut tx, season.key()).await?);
        let now = store::clock::now(&tx).await?;
        player.left_at = Some(now);
        store::players::update(&mut tx, season.key(), &player).await?;
        let act = TrailAct::WithdrawPlayer {
            player: player.id.0,
            handle: player.handle.clone(),
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.with(player))
    })
    .await
}

async fn last_week(conn: &mut Conn, season: SeasonKey) -> Result<LeftAfter, Refusal> {
    let weeks = store::weeks::list(conn, season).await?;
    let facts = weeks.iter().map(|week| (week.week, &week.facts));
    Ok(last_paired_week(facts).map_or(LeftAfter::NoWeek, LeftAfter::Week))
}
