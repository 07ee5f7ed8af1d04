//! Why the pairings of a week are as they are, for everybody who may see them.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::Desk;
use askama::Template;

use super::address::InWeek;
use super::answer::{PageAnswer, framed, show};
use super::moment::Moment;
use super::reasons::{ExplainedPair, Proof, explained, names, proof};
use super::roles::judges;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;

#[derive(Template)]
#[template(path = "rounds.html")]
struct RoundsPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    rounds: Vec<RoundPanel>,
    may_repair: bool,
}
framed!(RoundsPage);

/// A published round.
struct RoundPanel {
    number: u8,
    version: u8,
    reason: String,
    published: Moment,
    pairs: Vec<ExplainedPair>,
    proof: Proof,
    pins: Vec<String>,
    forbidden: Vec<String>,
    draw: String,
}

/// The published rounds of a week with their reasons.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/rounds")]
pub async fn show_rounds(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let week = scene.week(number)?;
    let found = app::rounds::list_rounds(&desk, visit.viewer, club, season, number).await?;
    let mut rounds = Vec::new();
    for round in &found {
        let Some(at) = round.published_at else {
            continue;
        };
        let ordered = |pairs: &[[uuid::Uuid; 2]]| {
            let pairs = pairs.iter().map(|pair| names(&scene, pair));
            pairs.collect::<Vec<_>>()
        };
        rounds.push(RoundPanel {
            number: round.number,
            version: round.version,
            reason: match &round.repair {
                Some(repair) => repair.reason.clone(),
                None => String::new(),
            },
            published: scene.clock(visit.t).at(at),
            pairs: explained(&scene, visit.t, round)?,
            proof: proof(&scene, visit.t, round)?,
            pins: ordered(&round.task.pins),
            forbidden: ordered(&round.task.forbidden),
            draw: document::hex(&round.draw),
        });
    }
    let is_open = week.0.facts.closed_at.is_none();
    show(&RoundsPage {
        may_repair: judges(scene.role) && is_open && !rounds.is_empty(),
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Week),
        week: WeekPanel::new(&scene, week, visit.t),
        rounds,
    })
}
