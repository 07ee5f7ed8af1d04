//! Page: the pairing desk: a proposal with its reasons, orders about pairs, publishing, closing the week.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::rounds::{ProposeRound, RoundRow};
use app::seasons::parse_policy;
use app::{Actor, App, Refusal};
use askama::Template;
use league::ids::{PlayerId, RoundId};
use league::keys::WeekKey;
use league::season::WeekPhase;
use uuid::Uuid;

use super::pairings::PairingRow;
use super::reasons::{ExplainedPair, Proof, explain_pairs, names, proof};
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::form_reader::{FormReader, broken_form};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::results::game::games_of_week;
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SignedInSeasonPage;
use crate::pages::week::panel::WeekPanel;
use crate::paths::WeekPath;
use messages::{Texts, forms};

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

/// What an organiser wants of a pair.
#[derive(Clone, Copy)]
enum Order {
    Pin,
    Forbid,
}

const PINNED: &str = "pin";
const FORBIDDEN: &str = "forbid";
/// Each with the word that the form sends.
const ORDERS: [(&str, Option<Order>); 3] = [
    ("", None),
    (PINNED, Some(Order::Pin)),
    (FORBIDDEN, Some(Order::Forbid)),
];

/// The desk of a week.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/pairing")]
pub async fn show_desk(page: SignedInSeasonPage, path: Path<WeekPath>) -> PageResult {
    let nothing = FormData::default();
    desk_page(&page, path.key()?, &nothing, FormErrors::default()).await
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
    let done = submit(&app, request.actor()?, week, &fields, request.t).await;
    let next = |()| format!("{}/pairing", urls::week(week));
    redirect_or_show_errors(done, next, async |errors| {
        let page = SignedInSeasonPage::load(app, request, week.season).await?;
        desk_page(&page, week, &fields, errors).await
    })
    .await
}

async fn submit(
    app: &App,
    actor: Actor,
    week: WeekKey,
    fields: &FormData,
    t: Texts,
) -> Result<(), Refusal> {
    match fields.text("act") {
        "publish" => {
            let mut form = FormReader::new(fields);
            let round = RoundId(form.id("round", &t.which_round()));
            let round = form.finish(round)?;
            app::rounds::publish_round(app, actor, week.season, round).await?;
        }
        "close" => app::standings::close_week(app, actor, week).await?,
        "propose" => {
            let command = parse_orders(fields, t)?;
            app::rounds::propose_round(app, actor, week, command).await?;
        }
        _ => return Err(broken_form()),
    }
    Ok(())
}

/// The orders about pairs of the table, and about one named besides.
fn parse_orders(fields: &FormData, t: Texts) -> Result<ProposeRound, Refusal> {
    let mut form = FormReader::new(fields);
    let mut command = ProposeRound {
        pins: Vec::new(),
        forbidden: Vec::new(),
    };
    let mut take = |order, pair| match order {
        Some(Order::Pin) => command.pins.push(pair),
        Some(Order::Forbid) => command.forbidden.push(pair),
        None => {}
    };
    let names = fields.without_token().map(|(name, _)| name);
    for name in names.filter(|name| name.starts_with("pair ")) {
        let order = form.choice(name, &t.order(), ORDERS);
        match pair_of(name) {
            Some(pair) => take(order, pair),
            None => form.fault(name, forms::form_broken()),
        }
    }
    let one = form.optional_id("one", &t.player());
    let other = form.optional_id("other", &t.and_player());
    match (one, other) {
        (None, None) => {}
        (Some(one), Some(other)) => {
            let order = form.choice("extra", &t.order(), ORDERS);
            take(order, [one, other].map(PlayerId));
        }
        (None, Some(_)) => form.fault("one", forms::form_choice(&*t.player())),
        (Some(_), None) => form.fault("other", forms::form_choice(&*t.and_player())),
    }
    form.finish(command)
}

/// The players of a field `pair <one> <other>`.
fn pair_of(name: &str) -> Option<[PlayerId; 2]> {
    let (one, other) = name.strip_prefix("pair ")?.split_once(' ')?;
    Some([one.parse().ok()?, other.parse().ok()?])
}

async fn desk_page(
    page: &SignedInSeasonPage,
    key: WeekKey,
    typed: &FormData,
    errors: FormErrors,
) -> PageResult {
    let (context, t) = (&page.context, page.t());
    if !context.can_run() {
        return Err(Refusal::NotFound.into());
    }
    let week = context.week(key.week)?;
    let rounds = app::rounds::list_rounds(&page.app, page.viewer(), key).await?;
    let proposed = rounds
        .iter()
        .find(|round| round.published_at.is_none() && round.repair.is_none());
    let drawn = rounds
        .iter()
        .filter(|round| round.published_at.is_some() && round.repair.is_none());
    let (drawn, per_week) = (
        drawn.count(),
        parse_policy(&context.season)?.rounds.per_week(),
    );
    let has_lists = matches!(week.1, WeekPhase::ListsOpened | WeekPhase::Paired);
    let games = games_of_week(page, key.week).await?;
    let desk = PairingDeskPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Board),
        may_propose: has_lists && drawn < usize::from(per_week),
        next_round: (per_week > 1).then_some((drawn + 1, per_week)),
        may_close: week.1 == WeekPhase::Paired,
        closed: week.1 == WeekPhase::Closed,
        round: proposed.map(|round| round.id.to_string()),
        pairs: match proposed {
            Some(round) => pairs(context, t, round, typed)?,
            None => Vec::new(),
        },
        proof: match proposed {
            Some(round) => Some(proof(context, t, round)?),
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
        week: WeekPanel::new(context, week, t),
        errors,
    };
    render_page_with_status(desk.errors.status(), &desk)
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
