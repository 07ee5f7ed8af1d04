//! Joining a season as a player, before its start or in the middle of it.

use league::catalogue::key::FactionKey;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::name::Name;
use league::season::SeasonState;
use league::week::WeekNo;
use serde_json::json;
use store::players::Player;
use store::seasons::Season;
use store::{Conn, UniqueConstraint};
use uuid::Uuid;

use crate::access::authorize;
use crate::record::Scene;
use crate::rounds::seats::find_free_seat;
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
    club: ClubId,
    id: SeasonId,
    command: JoinSeason,
) -> Result<Player, Refusal> {
    let handle = user_text::parse_name(&command.handle, "/handle", "handle")?;
    app.store
        .write(async |conn| {
            authorize(conn, actor, club, Action::Play).await?;
            let season = store::seasons::lock(conn, club, id).await?;
            let players = store::players::list(conn, club, id).await?;
            must_have_place(&season, &players)?;
            must_have_free_handle(&handle, actor, &players)?;
            let joined_week = first_week(conn, &season).await?;
            check_faction(conn, &season, joined_week, &command.faction).await?;
            check_nights(conn, (club, season.id), joined_week, &command.nights).await?;
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
                seat: find_free_seat(conn, &season).await?,
            };
            save(app, conn, &season, actor, &player).await?;
            Ok(player)
        })
        .await
}

async fn save(
    app: &App,
    conn: &mut Conn,
    season: &Season,
    actor: Actor,
    player: &Player,
) -> Result<(), Refusal> {
    let now = store::clock::now(conn).await?;
    let saved = store::players::create(conn, season.club, season.id, player, now).await;
    saved.map_err(|fault| match fault {
        store::StoreError::UniqueViolation(UniqueConstraint::PlayerHandle) => handle_taken(),
        store::StoreError::UniqueViolation(UniqueConstraint::PlayerAccount) => Refusal::rule(
            Reason::AlreadyRegistered,
            "You play in this season already.",
        ),
        other => other.into(),
    })?;
    Scene::in_season(season.key(), actor, now)
        .tell_everyone(
            app,
            conn,
            "join_season",
            json!({"player": player.id.0, "handle": player.handle, "week": player.joined_week.number()}),
        )
        .await
}

fn must_have_place(season: &Season, players: &[Player]) -> Result<(), Refusal> {
    if season.state == SeasonState::Ended {
        return Err(Refusal::rule(Reason::SeasonState, "The season is over."));
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
    Err(Refusal::rule(
        Reason::SeasonFull,
        format!("All {places} places are taken."),
    )
    .fact("limit", places))
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
    let detail = "Somebody has this handle in this season, or one that looks like it.";
    Refusal::fault(Reason::HandleTaken, "/handle", detail)
}

async fn first_week(conn: &mut Conn, season: &Season) -> Result<WeekNo, Refusal> {
    let now = store::clock::now(conn).await?;
    let weeks = store::weeks::list(conn, season.club, season.id).await?;
    let open = weeks
        .iter()
        .find(|week| week.facts.lists_opened_at.is_none() && now < week.facts.accepted_until());
    open.map(|week| week.week)
        .ok_or_else(|| Refusal::rule(Reason::SeasonState, "The last deadline has passed."))
}

pub(super) async fn check_faction(
    conn: &mut Conn,
    season: &Season,
    week: WeekNo,
    faction: &str,
) -> Result<(), Refusal> {
    let week = store::weeks::find(conn, season.club, season.id, week).await?;
    let number = week.catalogue_number;
    let catalogue = catalogues::load_catalogue(conn, season.club, season.catalogue, number).await?;
    let known = FactionKey::new(faction).is_ok_and(|key| catalogue.faction(&key).is_some());
    if known {
        return Ok(());
    }
    Err(Refusal::fault(
        Reason::Validation,
        "/faction",
        "The catalogue has no such faction.",
    ))
}

pub(crate) async fn check_nights(
    conn: &mut Conn,
    (club, season): (ClubId, SeasonId),
    week: WeekNo,
    nights: &[String],
) -> Result<(), Refusal> {
    let week = store::weeks::find(conn, club, season, week).await?;
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
        format!("The nights are {}, each at most once.", known.join(", ")),
    ))
}
