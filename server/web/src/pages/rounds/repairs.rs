//! Page: repairing a published round, when somebody is ill at noon, or a night or a table is lost. What would change
//! is shown before it is published.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::rounds::{RepairRound, RoundRepair, RoundRow};
use app::seasons::Week;
use app::{Actor, App, Refusal};
use askama::Template;
use league::ids::{PlayerId, RoundId};
use league::keys::WeekKey;
use league::pairing::NightKey;
use league::season::MAX_TABLES_PER_NIGHT;

use super::reasons::{Proof, night_name, proof};
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::form_reader::{FormReader, broken_form};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SignedInSeasonPage;
use crate::pages::week::panel::WeekPanel;
use crate::pages::words::roles::can_judge;
use crate::paths::WeekPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "repair.html")]
struct RepairPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    /// The versions that stand, by number; one for each round of the week.
    rounds: Vec<(String, u8, bool)>,
    players: Vec<(String, String, bool)>,
    nights: Vec<(String, String, String)>,
    reason: String,
    pending: Option<PendingRepair>,
    errors: FormErrors,
}
page_template!(RepairPage);

/// A repair that is not published yet.
struct PendingRepair {
    round: String,
    reason: String,
    changes: Vec<String>,
    proof: Proof,
}

/// The form, and what a repair would change.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/repair")]
pub async fn show_repair(page: SignedInSeasonPage, path: Path<WeekPath>) -> PageResult {
    let nothing = FormData::default();
    repair_page(&page, path.key()?, &nothing, FormErrors::default()).await
}

/// Proposes a repair, or publishes the one that was proposed.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/repair")]
pub async fn repair_round(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let done = submit(&app, request.actor()?, week, &fields, request.t).await;
    let next = |is_published| {
        let page = if is_published { "rounds" } else { "repair" };
        format!("{}/{page}", urls::week(week))
    };
    redirect_or_show_errors(done, next, async |errors| {
        let page = SignedInSeasonPage::load(app, request, week.season).await?;
        repair_page(&page, week, &fields, errors).await
    })
    .await
}

/// Whether the repair is published.
async fn submit(
    app: &App,
    actor: Actor,
    key: WeekKey,
    fields: &FormData,
    t: Texts,
) -> Result<bool, Refusal> {
    let mut form = FormReader::new(fields);
    let round = RoundId(form.id("round", &t.which_round()));
    match fields.text("act") {
        "publish" => {
            let round = form.finish(round)?;
            app::rounds::publish_round(app, actor, key.season, round).await?;
            Ok(true)
        }
        "repair" => {
            let week = app::seasons::find_week(app, Some(actor), key).await?;
            let command = parse_repair(&mut form, &week.0, t);
            let (round, command) = form.finish((round, command))?;
            app::rounds::repair_round(app, actor, key.season, round, command).await?;
            Ok(false)
        }
        _ => Err(broken_form()),
    }
}

fn parse_repair(form: &mut FormReader<'_>, week: &Week, t: Texts) -> RepairRound {
    let away = form.ids("away", &t.repair_away()).into_iter();
    let nights = week.nights.iter().map(|night| {
        let label = format!("{}, {}", t.tables(), night.key);
        let tables = form.number(&tables_field(&night.key), &label, 0..=MAX_TABLES_PER_NIGHT);
        (night, tables)
    });
    let changed = nights.filter(|(night, tables)| night.tables != *tables);
    RepairRound {
        nights: changed
            .map(|(night, tables)| (night.key.clone(), tables))
            .collect(),
        availabilities: away.map(|id| (PlayerId(id), Vec::new())).collect(),
        reason: form.text("reason"),
        pins: Vec::new(),
        forbidden: Vec::new(),
    }
}

fn tables_field(night: &str) -> String {
    format!("tables {night}")
}

async fn repair_page(
    page: &SignedInSeasonPage,
    key: WeekKey,
    typed: &FormData,
    errors: FormErrors,
) -> PageResult {
    let (context, t) = (&page.context, page.t());
    if !can_judge(context.role) {
        return Err(Refusal::NotFound.into());
    }
    let week = context.week(key.week)?;
    let all = app::rounds::list_rounds(&page.app, page.viewer(), key).await?;
    let current = current_rounds(&all);
    let away = typed.values("away");
    let chosen = typed.text("round");
    let in_round = |player: PlayerId| current.iter().any(|round| plays(round, player));
    let players = context.players.iter().filter(|player| in_round(player.id));
    let repair = RepairPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Board),
        rounds: current
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
                let tables = match typed.raw(&field) {
                    Some(typed) => typed.to_owned(),
                    None => night.tables.to_string(),
                };
                (night.key.clone(), field, tables)
            })
            .collect(),
        reason: typed.typed("reason").to_owned(),
        pending: pending(context, t, all)?,
        week: WeekPanel::new(context, week, t),
        errors,
    };
    render_page_with_status(repair.errors.status(), &repair)
}

/// The last published version of each round of the week.
fn current_rounds(rounds: &[RoundRow]) -> Vec<RoundRow> {
    let mut current: Vec<RoundRow> = Vec::new();
    for round in rounds.iter().filter(|round| round.published_at.is_some()) {
        match current
            .iter_mut()
            .find(|known| known.number == round.number)
        {
            Some(known) if known.version < round.version => *known = round.clone(),
            Some(_) => {}
            None => current.push(round.clone()),
        }
    }
    current.sort_by_key(|round| round.number);
    current
}

fn plays(round: &RoundRow, player: PlayerId) -> bool {
    let games = round.proposal.games.iter();
    let mut seats = games.flat_map(|game| [game.attacker, game.defender]);
    seats.any(|seat| seat == player.0) || round.proposal.byes.contains(&player.0)
}

fn pending(
    context: &SeasonContext,
    t: Texts,
    rounds: Vec<RoundRow>,
) -> Result<Option<PendingRepair>, Refusal> {
    let repairs = app::rounds::with_changes(rounds)?;
    let mut unpublished = repairs
        .iter()
        .filter(|repair| repair.round.published_at.is_none());
    let pending = unpublished.find_map(|it| Some((it, it.round.repair.as_ref()?)));
    let Some((RoundRepair { round, changes }, repair)) = pending else {
        return Ok(None);
    };
    let called = |player: PlayerId| context.handle(player).to_owned();
    let evening = |night: NightKey| night_name(context, round, night.number());
    Ok(Some(PendingRepair {
        round: round.id.to_string(),
        reason: repair.reason.clone(),
        changes: changes
            .iter()
            .map(|change| t.say(&change.message(&called, &evening)))
            .collect(),
        proof: proof(context, t, round)?,
    }))
}
