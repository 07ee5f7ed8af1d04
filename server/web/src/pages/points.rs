//! Points that a referee gives or takes: a line of its own with its reason, never an erasure.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::results::AdjustPoints;
use app::{Actor, Desk, Refusal};
use askama::Template;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::ledger::{Kind, Line};
use league::season::{Phase, SeasonState};
use league::week::WeekNo;
use serde::Deserialize;

use super::address::{self, InSeason};
use super::answer::{PageAnswer, framed, go, show_as};
use super::fields::Fields;
use super::roles::judges;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::told::Told;
use super::visit::{Frame, Visit};
use crate::query::Query;

#[derive(Template)]
#[template(path = "points.html")]
struct PointsPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    running: bool,
    players: Vec<(String, String)>,
    weeks: Vec<u8>,
    form: Form,
    lines: Vec<GivenLine>,
    told: Told,
}
framed!(PointsPage);

/// What stands in the form: typed, or filled in by a link from a line.
#[derive(Clone, Default, Deserialize)]
#[serde(default)]
pub struct Form {
    player: String,
    week: String,
    amount: String,
    reason: String,
}

struct GivenLine {
    player: String,
    id: String,
    week: u8,
    amount: i32,
    back: i32,
    why: String,
}

/// The form, and what was given and taken so far.
#[get("/clubs/{club}/seasons/{season}/points")]
pub async fn show_points(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    query: Query<Form>,
) -> PageAnswer {
    let (club, season) = path.ids();
    points_page(&desk, &visit, club, season, query.0, Told::default()).await
}

/// Gives or takes.
#[post("/clubs/{club}/seasons/{season}/points")]
pub async fn adjust_points(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    fields: Fields,
) -> PageAnswer {
    let (club, season) = path.ids();
    match act(&desk, visit.actor()?, club, season, &fields).await {
        Ok(()) => Ok(go(&format!("{}/points", address::season(club, season)))),
        Err(refusal) => {
            let text = |name: &str| fields.text(name).to_owned();
            let form = Form {
                player: text("player"),
                week: text("week"),
                amount: text("amount"),
                reason: text("reason"),
            };
            points_page(
                &desk,
                &visit,
                club,
                season,
                form,
                Told::or_problem(refusal)?,
            )
            .await
        }
    }
}

async fn act(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    fields: &Fields,
) -> Result<(), Refusal> {
    let week = fields.value("week").and_then(WeekNo::new);
    let command = AdjustPoints {
        key: None,
        player: PlayerId(fields.value("player").unwrap_or_default()),
        week: week.ok_or(Refusal::NotFound)?,
        amount: fields.value("amount").unwrap_or_default(),
        reason: fields.text("reason").to_owned(),
    };
    app::results::adjust_points(desk, actor, club, season, command).await?;
    Ok(())
}

async fn points_page(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    id: SeasonId,
    form: Form,
    told: Told,
) -> PageAnswer {
    visit.actor()?;
    let scene = SeasonScene::load(desk, visit, club, id).await?;
    if !judges(scene.role) {
        return Err(Refusal::NotFound.into());
    }
    let found = app::standings::find_standings(desk, visit.viewer, club, id, None).await?;
    let own = scene.own.as_ref().map(|own| own.id);
    let others = scene.players.iter().filter(|player| Some(player.id) != own);
    let weeks = scene.weeks.iter();
    let paired = weeks.filter(|(_, phase)| *phase >= Phase::Paired);
    let ledger = found.standings.ledger.iter();
    let ruled = ledger.filter(|line| line.kind == Kind::Ruling);
    let page = PointsPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Results),
        running: scene.season.state == SeasonState::Started,
        players: others
            .map(|player| (player.id.to_string(), player.handle.clone()))
            .collect(),
        weeks: paired.map(|(week, _)| week.week.number()).rev().collect(),
        lines: ruled.rev().map(|line| given(&scene, line)).collect(),
        form,
        told,
    };
    show_as(page.told.status(), &page)
}

fn given(scene: &SeasonScene, line: &Line) -> GivenLine {
    let amount = line.amount.get();
    GivenLine {
        player: scene.handle(line.player).to_owned(),
        id: line.player.to_string(),
        week: line.week.number(),
        amount,
        back: -amount,
        why: line.reason.to_string(),
    }
}
