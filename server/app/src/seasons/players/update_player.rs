//! Updating a player's usual nights, faction or household.

use std::collections::BTreeSet;

use document::trail::TrailAct;
use league::club_role::ClubRole;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::pairing::round::households::{
    DrawnRound, Resident, check_none_proposed, is_own_household,
};
use league::season::SeasonState;
use league::week::WeekNo;
use messages::{refusals, seasons};
use store::Conn;
use store::players::Player;
use store::seasons::Season;

use super::join_season::{must_be_faction, must_be_nights_of};
use crate::access::authorize;
use crate::rounds::households::resident;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Reason, Refusal, user_text};

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
/// after the start, [`Reason::ConflictOfInterest`] for one's own household after it,
/// [`Reason::WeekState`] for a household while a round is proposed, [`Reason::Validation`].
pub async fn update_player(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    player: PlayerId,
    command: UpdatePlayer,
) -> Result<Player, Refusal> {
    app.write(async |mut tx| {
        let role = authorize(&mut tx, actor, season.club, Action::Play).await?;
        let runs = matches!(role, ClubRole::Owner | ClubRole::Organiser);
        let season = store::seasons::lock(&mut tx, season).await?;
        let mut player = store::players::find(&tx, season.key(), player).await?;
        if !runs && (player.account != actor.account || command.household.is_some()) {
            return Err(Refusal::rule(Reason::Forbidden, refusals::organiser_only()));
        }
        if let Some(nights) = command.nights.clone() {
            let week = season.key().week(player.joined_week);
            let week = store::weeks::find(&mut tx, week).await?;
            must_be_nights_of(&week, &nights)?;
            player.nights = nights;
        }
        if let Some(faction) = command.faction.clone() {
            if season.state != SeasonState::Draft {
                return Err(Refusal::rule(Reason::SeasonFixed, seasons::faction_fixed()));
            }
            let week = season.key().week(player.joined_week);
            let week = store::weeks::find(&mut tx, week).await?;
            must_be_faction(&mut tx, &season, &week, &faction).await?;
            player.faction = faction;
        }
        if let Some(household) = &command.household {
            let household = household_name(household)?;
            if season.state != SeasonState::Draft && household != player.household {
                must_be_neutral(&mut tx, &season, actor, &player, &household).await?;
                must_have_no_proposal(&mut tx, &season).await?;
            }
            player.household = household;
        }
        store::players::update(&mut tx, season.key(), &player).await?;
        let now = store::clock::now(&tx).await?;
        let act = TrailAct::UpdatePlayer {
            player: player.id.0,
        };
        Ok(tx
            .record(OfficersEntry::in_season(season.key(), actor, now, act))
            .await?
            .with(player))
    })
    .await
}

/// Who lives with somebody does not meet them: nobody changes that for themselves while the season
/// runs.
async fn must_be_neutral(
    conn: &mut Conn,
    season: &Season,
    actor: Actor,
    player: &Player,
    household: &Option<String>,
) -> Result<(), Refusal> {
    let own = store::players::find_by_account(conn, season.key(), actor.account).await?;
    let after = Resident {
        household: household.as_deref(),
        ..resident(player)
    };
    if own.is_some_and(|own| is_own_household(resident(&own), resident(player), after)) {
        return Err(Refusal::rule(
            Reason::ConflictOfInterest,
            seasons::own_household(),
        ));
    }
    Ok(())
}

async fn must_have_no_proposal(conn: &mut Conn, season: &Season) -> Result<(), Refusal> {
    let key = season.key();
    let rounds = store::rounds::list(conn, key, None).await?;
    let weeks = store::weeks::list(conn, key).await?;
    let closed = weeks.iter().filter(|week| week.facts.closed_at.is_some());
    let closed: BTreeSet<WeekNo> = closed.map(|week| week.week).collect();
    let drawn = rounds.iter().map(|round| DrawnRound {
        is_published: round.published_at.is_some(),
        is_repair: round.repair.is_some(),
        is_week_closed: closed.contains(&round.week),
    });
    check_none_proposed(drawn).map_err(|fault| Refusal::rule(Reason::WeekState, fault.message()))
}

fn household_name(text: &str) -> Result<Option<String>, Refusal> {
    if text.is_empty() {
        return Ok(None);
    }
    let name = user_text::parse_name(text, "/household", refusals::household_fault)?;
    Ok(Some(name.to_string()))
}
