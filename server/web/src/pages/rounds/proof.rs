//! Page: why the pairings of a week are as they are, with the proof, for everybody who may see them.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::App;
use askama::Template;

use super::reasons::{ExplainedPair, Proof, explain_pairs, names, proof};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::week::panel::WeekPanel;
use crate::pages::words::local_time::LocalTime;
use crate::pages::words::roles::can_judge;
use crate::paths::WeekPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "rounds.html")]
struct RoundsPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    rounds: Vec<RoundPanel>,
    may_repair: bool,
}
page_template!(RoundsPage);

struct RoundPanel {
    number: u8,
    version: u8,
    reason: String,
    published: LocalTime,
    pairs: Vec<ExplainedPair>,
    proof: Proof,
    pins: Vec<String>,
    forbidden: Vec<String>,
    draw: String,
}

/// The published rounds of a week with their reasons.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/rounds")]
pub async fn show_rounds(app: Data<App>, request: PageRequest, path: Path<WeekPath>) -> PageResult {
    let key = path.key()?;
    let context = SeasonContext::load(&app, &request, key.season).await?;
    let week = context.week(key.week)?;
    let found = app::rounds::list_rounds(&app, request.viewer, key).await?;
    let mut rounds = Vec::new();
    for round in &found {
        let Some(at) = round.published_at else {
            continue;
        };
        let ordered = |pairs: &[[uuid::Uuid; 2]]| {
            let pairs = pairs.iter().map(|pair| names(&context, pair));
            pairs.collect::<Vec<_>>()
        };
        rounds.push(RoundPanel {
            number: round.number,
            version: round.version,
            reason: match &round.repair {
                Some(repair) => repair.reason.clone(),
                None => String::new(),
            },
            published: context.times(request.t).date_time(at),
            pairs: explain_pairs(&context, request.t, round)?,
            proof: proof(&context, request.t, round)?,
            pins: ordered(&round.task.pins),
            forbidden: ordered(&round.task.forbidden),
            draw: hex::encode(&round.draw),
        });
    }
    let is_open = week.0.facts.closed_at.is_none();
    render_page(&RoundsPage {
        may_repair: can_judge(context.role) && is_open && !rounds.is_empty(),
        layout: request.layout(),
        t: request.t,
        header: context.header(&request, SeasonTab::Week),
        week: WeekPanel::new(&context, week, request.t),
        rounds,
    })
}
