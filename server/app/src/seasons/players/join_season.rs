//! Joining a season as a player, before its start or in the middle of it.

use document::trail::TrailAct;
use league::catalogue::key::FactionKey;
use league::ids::PlayerId;
use league::keys::{SeasonKey, WeekKey};
use league::name::Name;
use league::season::SeasonState;
use league::week::WeekNo;
use messages::{refusals, seasons};
use store::players::Player;
use store::seasons::Season;
use store::{Conn, StoreError, UniqueConstraint};
use uuid::Uuid;

use crate::access::authorize;
use crate::rounds::seats::find_free_seat;
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
        must_have_place(&season, &players)?;
        must_have_free_handle(&handle, actor, &players)?;
        let joined_week = first_week(&mut tx, &season).await?;
        check_faction(&mut tx, &season, joined_week, &command.faction).await?;
        check_nights(&mut tx, season.key().week(joined_week), &command.nights).await?;
        let player = Player {
            id: PlayerId(Uuid::new_v4()),
            account: actor.account,
            handle: handle.to_string(),
            faction: command.faction,
            household: None,
            nights: command.nights,
            joined_week,
            left_after: None,
            left_at: None,
            seat: find_free_seat(&mut tx, &season).await?,
        };
        let now = store::clock::now(&tx).await?;
        let saved = store::players::create(&mut tx, season.key(), &player, now).await;
        saved.map_err(refuse_second_place)?;
        let act = TrailAct::JoinSeason {
            player: player.id.0,
            handle: player.handle.clone(),
            week: joined_week.number(),
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.with(player))
    })
    .await
}

fn refuse_second_place(fault: StoreError) -> Refusal {
    match fault {
        StoreError::UniqueViolation(UniqueConstraint::PlayerHandle) => handle_taken(),
        StoreError::UniqueViolation(UniqueConstraint::PlayerAccount) => {
            Refusal::rule(Reason::AlreadyRegistered, seasons::already_registered())
        }
        other => other.into(),
    }
}

fn must_have_place(season: &Season, players: &[Player]) -> Result<(), Refusal> {
    if season.state == SeasonState::Ended {
        return Err(Refusal::rule(Reason::SeasonState, seasons::season_over()));
    }
    let Some(places) = season.places else {
        return Ok(());
    };
    let taken = players
        .iter()
        .filter(|player| player.left_after.is_none())
        .count();
    if taken < usize::from(places) {
        return Ok(());
    }
    Err(Refusal::rule(Reason::SeasonFull, seasons::season_full(places)).fact("limit", places))
}

/// The season is locked, so that two who look alike do not come at once.
fn must_have_free_handle(handle: &Name, actor: Actor, players: &[Player]) -> Result<(), Refusal> {
    let mut others = players.iter().filter(|it| it.account != actor.account);
    let alike = |other: &Player| Name::new(&other.handle).is_ok_and(|it| it.looks_like(handle));
    if others.any(alike) {
        return Err(handle_taken());
    }
    Ok(())
}

fn handle_taken() -> Refusal {
    let message = seasons::handle_taken();
    Refusal::fault(Reason::HandleTaken, "/handle", message)
}

async fn first_week(conn: &mut Conn, season: &Season) -> Result<WeekNo, Refusal> {
    let now = store::clock::now(conn).await?;
    let weeks = store::weeks::list(conn, season.key()).await?;
    let open = weeks
        .iter()
        .find(|week| week.facts.lists_opened_at.is_none() && now < week.facts.accepted_until());
    open.map(|week| week.week)
        .ok_or_else(|| Refusal::rule(Reason::SeasonState, seasons::last_deadline_passed()))
}

pub(super) async fn check_faction(
    conn: &mut Conn,
    season: &Season,
    week: WeekNo,
    faction: &str,
) -> Result<(), Refusal> {
    let week = store::weeks::find(conn, season.key().week(week)).await?;
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

pub(crate) async fn check_nights(
    conn: &mut Conn,
    week: WeekKey,
    nights: &[String],
) -> Result<(), Refusal> {
    let week = store::weeks::find(conn, week).await?;
    let unknown = nights
        .iter()
        .find(|key| !week.nights.iter().any(|night| night.key == **key));
    let doubled = nights
        .iter()
        .enumerate()
        .any(|(i, key)| nights.iter().take(i).any(|k| k == key));
    if unknown.is_none() && !doubled {
        return Ok(());
    }
    let known: Vec<&str> = week.nights.iter().map(|night| night.key.as_str()).collect();
    Err(Refusal::fault(
        Reason::Validation,
        "/nights",
        seasons::nights_known(known.join(", ")),
    ))
}
