//! Joining a season as a player, before its start or in the middle of it.

use document::trail::TrailAct;
use league::catalogue::key::FactionKey;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::name::Name;
use league::season::{JoinFault, check_handle, check_nights, check_place, first_week_to_play};
use league::time::Instant;
use messages::{refusals, seasons};
use store::players::Player;
use store::seasons::Season;
use store::weeks::Week;
use store::{Conn, StoreError, UniqueConstraint};
use uuid::Uuid;

use crate::access::authorize;
use crate::rounds::seats::free_seat;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal, catalogues, user_text};

/// What it takes to join.
#[derive(Clone, Debug)]
pub struct JoinSeason {
    /// Name in this season; a nickname is best.
    pub handle: String,
    pub faction: String,
    /// Nights one can usually come.
    pub nights: Vec<String>,
}

/// Joins for the first week whose lists are not due yet.
///
/// # Errors
/// [`Reason::SeasonState`] after the last deadline, [`Reason::SeasonFull`],
/// [`Reason::AlreadyRegistered`], [`Reason::HandleTaken`], [`Reason::InvalidName`],
/// [`Reason::Validation`] for faction or nights.
pub async fn join_season(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    command: JoinSeason,
) -> Result<Player, Refusal> {
    let handle = user_text::parse_name(&command.handle, "/handle", refusals::handle_fault)?;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, season.club, Action::Play).await?;
        let season = store::seasons::lock(&mut tx, season).await?;
        let players = store::players::list(&tx, season.key()).await?;
        let weeks = store::weeks::list(&tx, season.key()).await?;
        let now = store::clock::now(&tx).await?;
        let week = first_week(&season, &handle, actor, &players, &weeks, now)?;
        must_be_faction(&mut tx, &season, week, &command.faction).await?;
        must_be_nights_of(week, &command.nights)?;
        let player = Player {
            id: PlayerId(Uuid::new_v4()),
            account: actor.account,
            handle: handle.to_string(),
            faction: command.faction.clone(),
            household: None,
            nights: command.nights.clone(),
            joined_week: week.week,
            left_after: None,
            left_at: None,
            seat: free_seat(&players)?,
        };
        let saved = store::players::create(&mut tx, season.key(), &player, now).await;
        saved.map_err(refuse_second_place)?;
        let act = TrailAct::JoinSeason {
            player: player.id.0,
            handle: player.handle.clone(),
            week: week.week.number(),
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.with(player))
    })
    .await
}

fn refuse_second_place(fault: StoreError) -> Refusal {
    match fault {
        StoreError::UniqueViolation(UniqueConstraint::PlayerHandle) => {
            join_refusal(JoinFault::HandleTaken)
        }
        StoreError::UniqueViolation(UniqueConstraint::PlayerAccount) => {
            Refusal::rule(Reason::AlreadyRegistered, seasons::already_registered())
        }
        other => other.into(),
    }
}

/// The week from which on the newcomer plays. The season is locked, so that two who look alike do not come
/// at once.
fn first_week<'w>(
    season: &Season,
    handle: &Name,
    actor: Actor,
    players: &[Player],
    weeks: &'w [Week],
    now: Instant,
) -> Result<&'w Week, Refusal> {
    let there = players.iter().filter(|player| player.left_after.is_none());
    check_place(season.state, season.places, there.count()).map_err(join_refusal)?;
    let others = players.iter().filter(|it| it.account != actor.account);
    let handles = others.map(|other| other.handle.as_str());
    check_handle(handle, handles).map_err(join_refusal)?;
    let facts = weeks.iter().map(|week| (week.week, &week.facts));
    let first = first_week_to_play(facts, now).map_err(join_refusal)?;
    let week = weeks.iter().find(|week| week.week == first);
    week.ok_or(Refusal::NotFound)
}

fn join_refusal(fault: JoinFault) -> Refusal {
    let message = fault.message();
    match fault {
        JoinFault::SeasonOver | JoinFault::LastDeadlinePassed => {
            Refusal::rule(Reason::SeasonState, message)
        }
        JoinFault::Full(places) => Refusal::rule(Reason::SeasonFull, message).fact("limit", places),
        JoinFault::HandleTaken => Refusal::fault(Reason::HandleTaken, "/handle", message),
    }
}

/// # Errors
/// [`Reason::Validation`] for a faction that the week's version of the catalogue does not have.
pub(super) async fn must_be_faction(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    faction: &str,
) -> Result<(), Refusal> {
    let number = week.catalogue_number;
    let catalogue = catalogues::load_catalogue(conn, season.club, season.catalogue, number).await?;
    let known = FactionKey::new(faction).is_ok_and(|key| catalogue.faction(&key).is_some());
    if known {
        return Ok(());
    }
    Err(Refusal::fault(
        Reason::Validation,
        "/faction",
        seasons::faction_unknown(),
    ))
}

/// # Errors
/// [`Reason::Validation`] for nights that the week does not have, or one twice.
pub(crate) fn must_be_nights_of(week: &Week, nights: &[String]) -> Result<(), Refusal> {
    check_nights(nights, &week.nights)
        .map_err(|fault| Refusal::fault(Reason::Validation, "/nights", fault.message()))
}
