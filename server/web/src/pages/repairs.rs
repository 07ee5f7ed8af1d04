//! Repairing a published round: somebody is ill at noon, a night or a table is lost. What would change
//! is shown before anybody else sees it.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::rounds::{Repair, RepairRound, Round};
use app::{Actor, Desk, Refusal};
use askama::Template;
use league::ids::{PlayerId, RoundId};
use league::pairing::NightKey;

use super::address::{self, InWeek};
use super::answer::{PageAnswer, framed, show_as};
use super::fields::Fields;
use super::reasons::{Proof, proof};
use super::roles::judges;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;

#[derive(Template)]
#[template(path = "repair.html")]
struct RepairPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    /// The versions that stand, by number; one for each round of the week.
    rounds: Vec<(String, u8, bool)>,
    players: Vec<(String, String, bool)>,
    nights: Vec<(String, String, u16)>,
    reason: String,
    pending: Option<PendingRepair>,
    told: Told,
}
framed!(RepairPage);

/// A repair that is not published yet.
struct PendingRepair {
    round: String,
    reason: String,
    changes: Vec<String>,
    proof: Proof,
}

/// The form, and what a repair would change.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/repair")]
pub async fn show_repair(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    let nothing = Fields::default();
    repair_page(&desk, &visit, path.into_inner(), &nothing, Told::default()).await
}

/// Proposes a repair, or publishes the one that was proposed.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/repair")]
pub async fn repair_round(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let done = act(&desk, visit.actor()?, &visit, *path, &fields).await;
    let next = |is_published| {
        let page = if is_published { "rounds" } else { "repair" };
        format!("{}/{page}", address::week(club, season, week))
    };
    go_or_tell(done, next, async |told| {
        repair_page(&desk, &visit, *path, &fields, told).await
    })
    .await
}

/// Whether the repair is published.
async fn act(
    desk: &Desk,
    actor: Actor,
    visit: &Visit,
    path: InWeek,
    fields: &Fields,
) -> Result<bool, Refusal> {
    let (club, season, number) = path.ids().map_err(|_| Refusal::NotFound)?;
    let round = RoundId(fields.value("round").unwrap_or_default());
    if fields.text("act") == "publish" {
        app::rounds::publish_round(desk, actor, club, season, round).await?;
        return Ok(true);
    }
    let (week, _) = app::seasons::find_week(desk, visit.viewer, club, season, number).await?;
    let away = fields.all("away");
    let away = away.iter().filter_map(|id| id.parse().ok());
    let tables = week.nights.iter().filter_map(|night| {
        let now: u16 = fields.value(&tables_field(&night.key))?;
        (now != night.tables).then(|| (night.key.clone(), now))
    });
    let command = RepairRound {
        reason: fields.text("reason").to_owned(),
        availabilities: away.map(|id| (PlayerId(id), Vec::new())).collect(),
        nights: tables.collect(),
        pins: Vec::new(),
        forbidden: Vec::new(),
    };
    app::rounds::repair_round(desk, actor, club, season, round, command).await?;
    Ok(false)
}

fn tables_field(night: &str) -> String {
    format!("tables {night}")
}

async fn repair_page(
    desk: &Desk,
    visit: &Visit,
    path: InWeek,
    typed: &Fields,
    told: Told,
) -> PageAnswer {
    visit.actor()?;
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(desk, visit, club, season).await?;
    if !judges(scene.role) {
        return Err(Refusal::NotFound.into());
    }
    let week = scene.week(number)?;
    let all = app::rounds::list_rounds(desk, visit.viewer, club, season, number).await?;
    let standing = standing(&all);
    let away = typed.all("away");
    let chosen = typed.text("round");
    let in_round = |player: PlayerId| standing.iter().any(|round| plays(round, player));
    let players = scene.players.iter().filter(|player| in_round(player.id));
    let page = RepairPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Board),
        rounds: standing
            .iter()
            .map(|round| {
                let id = round.id.to_string();
                let is_chosen = id == chosen;
                (id, round.number, is_chosen)
            })
            .collect(),
        players: players
            .map(|player| {
                let id = player.id.to_string();
                let is_away = away.contains(&id);
                (id, player.handle.clone(), is_away)
            })
            .collect(),
        nights: week
            .0
            .nights
            .iter()
            .map(|night| {
                let field = tables_field(&night.key);
                let now = typed.value(&field).unwrap_or(night.tables);
                (night.key.clone(), field, now)
            })
            .collect(),
        reason: typed.text("reason").to_owned(),
        pending: pending(&scene, visit.t, all)?,
        week: WeekPanel::new(&scene, week, visit.t),
        told,
    };
    show_as(page.told.status(), &page)
}

/// The last published version of each round of the week.
fn standing(rounds: &[Round]) -> Vec<Round> {
    let mut standing: Vec<Round> = Vec::new();
    for round in rounds.iter().filter(|round| round.published_at.is_some()) {
        match standing
            .iter_mut()
            .find(|known| known.number == round.number)
        {
            Some(known) if known.version < round.version => *known = round.clone(),
            Some(_) => {}
            None => standing.push(round.clone()),
        }
    }
    standing.sort_by_key(|round| round.number);
    standing
}

fn plays(round: &Round, player: PlayerId) -> bool {
    let games = round.proposal.games.iter();
    let mut seats = games.flat_map(|game| [game.attacker, game.defender]);
    seats.any(|seat| seat == player.0) || round.proposal.byes.contains(&player.0)
}

fn pending(
    scene: &SeasonScene,
    t: &Texts,
    rounds: Vec<Round>,
) -> Result<Option<PendingRepair>, Refusal> {
    let repairs = app::rounds::with_changes(rounds)?;
    let pending = repairs
        .iter()
        .find(|repair| repair.round.repair.is_some() && repair.round.published_at.is_none());
    let Some(Repair { round, changes }) = pending else {
        return Ok(None);
    };
    let called = |player: PlayerId| scene.handle(player).to_owned();
    let nights = scene.week(round.week).ok();
    let evening = |night: NightKey| {
        let night = nights.and_then(|(week, _)| week.nights.get(usize::from(night.number())));
        night.map(|night| night.key.clone()).unwrap_or_default()
    };
    let reason = round.repair.as_ref().map(|repair| repair.reason.clone());
    Ok(Some(PendingRepair {
        round: round.id.to_string(),
        reason: reason.unwrap_or_default(),
        changes: changes
            .iter()
            .map(|change| t.speech().changed(change, &called, &evening))
            .collect(),
        proof: proof(scene, t, round)?,
    }))
}
