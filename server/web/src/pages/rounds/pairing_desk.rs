//! Page: the pairing desk: a proposal with its reasons, orders about pairs, publishing, closing the week.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::rounds::{ProposeRound, RoundRow};
use app::{Actor, App, Refusal};
use askama::Template;
use league::ids::{PlayerId, RoundId};
use league::season::WeekPhase;
use uuid::Uuid;

use super::pairings::PairingRow;
use super::reasons::{ExplainedPair, Proof, explain_pairs, names, proof};
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::results::game::games_of_week;
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::week::panel::WeekPanel;
use crate::paths::WeekPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "pairing_desk.html")]
struct PairingDeskPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    may_propose: bool,
    /// Which round of the week is next, of how many; where there are several.
    next_round: Option<(usize, u8)>,
    may_close: bool,
    closed: bool,
    round: Option<String>,
    pairs: Vec<ProposedPair>,
    proof: Option<Proof>,
    players: Vec<(String, String)>,
    /// The two of an order about another pair, as they were chosen.
    extra_one: String,
    extra_other: String,
    games: Vec<PairingRow>,
    open: usize,
    errors: FormErrors,
}
page_template!(PairingDeskPage);

/// A pair of the proposal, or one that an order keeps out of it.
struct ProposedPair {
    /// Name of the field for an order about it; a bye has none.
    field: String,
    order: String,
    pair: ExplainedPair,
}

const PINNED: &str = "pin";
const FORBIDDEN: &str = "forbid";

/// The desk of a week.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/pairing")]
pub async fn show_desk(app: Data<App>, request: PageRequest, path: Path<WeekPath>) -> PageResult {
    let nothing = FormData::default();
    desk_page(
        &app,
        &request,
        path.into_inner(),
        &nothing,
        FormErrors::default(),
    )
    .await
}

/// Proposes, publishes or closes.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/pairing")]
pub async fn act_at_desk(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let done = submit(&app, request.actor()?, *path, &fields).await;
    let next = |()| format!("{}/pairing", urls::week(week));
    redirect_or_show_errors(done, next, async |errors| {
        desk_page(&app, &request, *path, &fields, errors).await
    })
    .await
}

async fn submit(app: &App, actor: Actor, path: WeekPath, fields: &FormData) -> Result<(), Refusal> {
    let week = path.key().map_err(|_| Refusal::NotFound)?;
    match fields.text("act") {
        "publish" => {
            let round = RoundId(fields.parse("round").unwrap_or_default());
            app::rounds::publish_round(app, actor, week.season, round).await?;
        }
        "close" => app::standings::close_week(app, actor, week).await?,
        _ => {
            let command = ProposeRound {
                pins: ordered_pairs(fields, PINNED),
                forbidden: ordered_pairs(fields, FORBIDDEN),
            };
            app::rounds::propose_round(app, actor, week, command).await?;
        }
    }
    Ok(())
}

/// The pairs with this order, those of the table and one named besides.
fn ordered_pairs(fields: &FormData, order: &str) -> Vec<[PlayerId; 2]> {
    let pairs = fields.without_token().filter(|(_, value)| *value == order);
    let listed = pairs.filter_map(|(name, _)| {
        let (one, other) = name.strip_prefix("pair ")?.split_once(' ')?;
        Some([PlayerId(one.parse().ok()?), PlayerId(other.parse().ok()?)])
    });
    let named = || {
        let (one, other) = (fields.parse("one")?, fields.parse("other")?);
        (fields.text("extra") == order).then_some([PlayerId(one), PlayerId(other)])
    };
    listed.chain(named()).collect()
}

async fn desk_page(
    app: &App,
    request: &PageRequest,
    path: WeekPath,
    typed: &FormData,
    errors: FormErrors,
) -> PageResult {
    request.actor()?;
    let key = path.key()?;
    let context = SeasonContext::load(app, request, key.season).await?;
    if !context.can_run() {
        return Err(Refusal::NotFound.into());
    }
    let week = context.week(key.week)?;
    let rounds = app::rounds::list_rounds(app, request.viewer, key).await?;
    let proposed = rounds
        .iter()
        .find(|round| round.published_at.is_none() && round.repair.is_none());
    let drawn = rounds
        .iter()
        .filter(|round| round.published_at.is_some() && round.repair.is_none());
    let (drawn, per_week) = (drawn.count(), per_week(&context));
    let has_lists = matches!(week.1, WeekPhase::ListsOpened | WeekPhase::Paired);
    let games = games_of_week(app, request, &context, key.week).await?;
    let page = PairingDeskPage {
        layout: request.layout(),
        t: request.t,
        header: context.header(request, SeasonTab::Board),
        may_propose: has_lists && drawn < usize::from(per_week),
        next_round: (per_week > 1).then_some((drawn + 1, per_week)),
        may_close: week.1 == WeekPhase::Paired,
        closed: week.1 == WeekPhase::Closed,
        round: proposed.map(|round| round.id.to_string()),
        pairs: match proposed {
            Some(round) => pairs(&context, request.t, round, typed)?,
            None => Vec::new(),
        },
        proof: match proposed {
            Some(round) => Some(proof(&context, request.t, round)?),
            None => None,
        },
        extra_one: typed.text("one").to_owned(),
        extra_other: typed.text("other").to_owned(),
        players: context
            .players
            .iter()
            .filter(|player| player.plays_in(key.week))
            .map(|player| (player.id.to_string(), player.handle.clone()))
            .collect(),
        open: games.iter().filter(|game| game.open).count(),
        games,
        week: WeekPanel::new(&context, week, request.t),
        errors,
    };
    render_page_with_status(page.errors.status(), &page)
}

/// Rounds in each week of the season.
fn per_week(context: &SeasonContext) -> u8 {
    let policy = context.season.policy.to_policy().ok();
    policy.map_or(1, |policy| policy.rounds.per_week())
}

/// The pairs of the proposal, and those that an order keeps out of it.
fn pairs(
    context: &SeasonContext,
    t: Texts,
    round: &RoundRow,
    typed: &FormData,
) -> Result<Vec<ProposedPair>, Refusal> {
    let mut pairs: Vec<ProposedPair> = explain_pairs(context, t, round)?
        .into_iter()
        .map(|pair| proposed(round, pair, typed))
        .collect();
    pairs.extend(round.task.forbidden.iter().map(|players| {
        let kept_out = ExplainedPair {
            place: String::new(),
            players: players.to_vec(),
            names: names(context, players),
            sentences: Vec::new(),
        };
        proposed(round, kept_out, typed)
    }));
    Ok(pairs)
}

fn proposed(round: &RoundRow, pair: ExplainedPair, typed: &FormData) -> ProposedPair {
    let [one, other] = pair.players[..] else {
        return ProposedPair {
            field: String::new(),
            order: String::new(),
            pair,
        };
    };
    let same = |known: &[Uuid; 2]| *known == [one, other] || *known == [other, one];
    let field = format!("pair {one} {other}");
    let kept = if round.task.pins.iter().any(same) {
        PINNED
    } else if round.task.forbidden.iter().any(same) {
        FORBIDDEN
    } else {
        ""
    };
    ProposedPair {
        order: typed.raw(&field).unwrap_or(kept).to_owned(),
        field,
        pair,
    }
}
