//! Page: why the pairings of a week are as they are, with the proof, for everybody who may see them.

use actix_web::get;
use actix_web::web::Path;
use askama::Template;

use super::reasons::{ExplainedPair, Proof, explain_pairs, names, proof};
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::season::context::{SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SeasonPage;
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
pub async fn show_rounds(page: SeasonPage, path: Path<WeekPath>) -> PageResult {
    let key = path.key()?;
    let (context, t) = (&page.context, page.t());
    let week = context.week(key.week)?;
    let found = app::rounds::list_rounds(&page.app, page.viewer(), key).await?;
    let mut rounds = Vec::new();
    for round in &found {
        let Some(at) = round.published_at else {
            continue;
        };
        let ordered = |pairs: &[[uuid::Uuid; 2]]| {
            let pairs = pairs.iter().map(|pair| names(context, pair));
            pairs.collect::<Vec<_>>()
        };
        rounds.push(RoundPanel {
            number: round.number,
            version: round.version,
            reason: match &round.repair {
                Some(repair) => repair.reason.clone(),
                None => String::new(),
            },
            published: context.times(t).date_time(at),
            pairs: explain_pairs(context, t, round)?,
            proof: proof(context, t, round)?,
            pins: ordered(&round.task.pins),
            forbidden: ordered(&round.task.forbidden),
            draw: hex::encode(&round.draw),
        });
    }
    let is_open = week.0.facts.closed_at.is_none();
    render_page(&RoundsPage {
        may_repair: can_judge(context.role) && is_open && !rounds.is_empty(),
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Week),
        week: WeekPanel::new(context, week, t),
        rounds,
    })
}
