//! The pairing desk: a proposal with its reasons, orders about pairs, publishing, closing the week.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::rounds::{ProposeRound, Round};
use app::{Actor, Desk, Refusal};
use askama::Template;
use league::ids::{PlayerId, RoundId};
use league::season::Phase;
use uuid::Uuid;

use super::address::{self, InWeek};
use super::answer::{PageAnswer, framed, show_as};
use super::fields::Fields;
use super::games::of_week;
use super::pairings::PairingRow;
use super::reasons::{ExplainedPair, Proof, explained, names, proof};
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;

#[derive(Template)]
#[template(path = "pairing_desk.html")]
struct PairingDeskPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
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
    told: Told,
}
framed!(PairingDeskPage);

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
pub async fn show_desk(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    let nothing = Fields::default();
    desk_page(&desk, &visit, path.into_inner(), &nothing, Told::default()).await
}

/// Proposes, publishes or closes.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/pairing")]
pub async fn act_at_desk(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let done = act(&desk, visit.actor()?, *path, &fields).await;
    let next = |()| format!("{}/pairing", address::week(club, season, week));
    go_or_tell(done, next, async |told| {
        desk_page(&desk, &visit, *path, &fields, told).await
    })
    .await
}

async fn act(desk: &Desk, actor: Actor, path: InWeek, fields: &Fields) -> Result<(), Refusal> {
    let (club, season, week) = path.ids().map_err(|_| Refusal::NotFound)?;
    match fields.text("act") {
        "publish" => {
            let round = RoundId(fields.value("round").unwrap_or_default());
            app::rounds::publish_round(desk, actor, club, season, round).await?;
        }
        "close" => app::standings::close_week(desk, actor, club, season, week).await?,
        _ => {
            let command = ProposeRound {
                pins: ordered(fields, PINNED),
                forbidden: ordered(fields, FORBIDDEN),
            };
            app::rounds::propose_round(desk, actor, club, season, week, command).await?;
        }
    }
    Ok(())
}

/// The pairs with this order, those of the table and one named besides.
fn ordered(fields: &Fields, order: &str) -> Vec<[PlayerId; 2]> {
    let pairs = fields.carried().filter(|(_, value)| *value == order);
    let listed = pairs.filter_map(|(name, _)| {
        let (one, other) = name.strip_prefix("pair ")?.split_once(' ')?;
        Some([PlayerId(one.parse().ok()?), PlayerId(other.parse().ok()?)])
    });
    let named = || {
        let (one, other) = (fields.value("one")?, fields.value("other")?);
        (fields.text("extra") == order).then_some([PlayerId(one), PlayerId(other)])
    };
    listed.chain(named()).collect()
}

async fn desk_page(
    desk: &Desk,
    visit: &Visit,
    path: InWeek,
    typed: &Fields,
    told: Told,
) -> PageAnswer {
    visit.actor()?;
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(desk, visit, club, season).await?;
    if !scene.runs() {
        return Err(Refusal::NotFound.into());
    }
    let week = scene.week(number)?;
    let rounds = app::rounds::list_rounds(desk, visit.viewer, club, season, number).await?;
    let proposed = rounds
        .iter()
        .find(|round| round.published_at.is_none() && round.repair.is_none());
    let drawn = rounds
        .iter()
        .filter(|round| round.published_at.is_some() && round.repair.is_none());
    let (drawn, per_week) = (drawn.count(), per_week(&scene));
    let has_lists = matches!(week.1, Phase::ListsOpened | Phase::Paired);
    let games = of_week(desk, visit, &scene, number).await?;
    let page = PairingDeskPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Board),
        may_propose: has_lists && drawn < usize::from(per_week),
        next_round: (per_week > 1).then_some((drawn + 1, per_week)),
        may_close: week.1 == Phase::Paired,
        closed: week.1 == Phase::Closed,
        round: proposed.map(|round| round.id.to_string()),
        pairs: match proposed {
            Some(round) => pairs(&scene, visit.t, round, typed)?,
            None => Vec::new(),
        },
        proof: match proposed {
            Some(round) => Some(proof(&scene, visit.t, round)?),
            None => None,
        },
        extra_one: typed.text("one").to_owned(),
        extra_other: typed.text("other").to_owned(),
        players: scene
            .players
            .iter()
            .filter(|player| player.plays_in(number))
            .map(|player| (player.id.to_string(), player.handle.clone()))
            .collect(),
        open: games.iter().filter(|game| game.open).count(),
        games,
        week: WeekPanel::new(&scene, week, visit.t),
        told,
    };
    show_as(page.told.status(), &page)
}

/// Rounds in each week of the season.
fn per_week(scene: &SeasonScene) -> u8 {
    let policy = scene.season.policy.read().ok();
    policy.map_or(1, |policy| policy.rounds.per_week())
}

/// The pairs of the proposal, and those that an order keeps out of it.
fn pairs(
    scene: &SeasonScene,
    t: &Texts,
    round: &Round,
    typed: &Fields,
) -> Result<Vec<ProposedPair>, Refusal> {
    let mut pairs: Vec<ProposedPair> = explained(scene, t, round)?
        .into_iter()
        .map(|pair| proposed(round, pair, typed))
        .collect();
    pairs.extend(round.task.forbidden.iter().map(|players| {
        let kept_out = ExplainedPair {
            place: String::new(),
            players: players.to_vec(),
            names: names(scene, players),
            sentences: Vec::new(),
        };
        proposed(round, kept_out, typed)
    }));
    Ok(pairs)
}

fn proposed(round: &Round, pair: ExplainedPair, typed: &Fields) -> ProposedPair {
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
        order: typed.sent(&field).unwrap_or(kept).to_owned(),
        field,
        pair,
    }
}
