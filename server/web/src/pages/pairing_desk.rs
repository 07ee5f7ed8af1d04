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
use super::answer::{PageAnswer, framed, go, show_as};
use super::fields::Fields;
use super::games::of_week;
use super::pairings::PairingRow;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::told::Told;
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
    may_close: bool,
    round: Option<String>,
    pairs: Vec<ProposedPair>,
    games: Vec<PairingRow>,
    open: usize,
    told: Told,
}
framed!(PairingDeskPage);

/// A pair of the proposal, or one that an order keeps out of it.
struct ProposedPair {
    field: String,
    place: String,
    names: String,
    sentences: Vec<String>,
    order: &'static str,
    is_bye: bool,
}

const PINNED: &str = "pin";
const FORBIDDEN: &str = "forbid";

/// The desk of a week.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/pairing")]
pub async fn show_desk(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    desk_page(&desk, &visit, path.into_inner(), Told::default()).await
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
    match act(&desk, visit.actor()?, *path, &fields).await {
        Ok(()) => Ok(go(&format!(
            "{}/pairing",
            address::week(club, season, week)
        ))),
        Err(refusal) => {
            let told = Told::or_problem(refusal)?;
            desk_page(&desk, &visit, path.into_inner(), told).await
        }
    }
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

/// The pairs with this order.
fn ordered(fields: &Fields, order: &str) -> Vec<[PlayerId; 2]> {
    let pairs = fields.carried().filter(|(_, value)| *value == order);
    pairs
        .filter_map(|(name, _)| {
            let (one, other) = name.strip_prefix("pair ")?.split_once(' ')?;
            Some([PlayerId(one.parse().ok()?), PlayerId(other.parse().ok()?)])
        })
        .collect()
}

async fn desk_page(desk: &Desk, visit: &Visit, path: InWeek, told: Told) -> PageAnswer {
    visit.actor()?;
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(desk, visit, club, season).await?;
    if !scene.runs() {
        return Err(Refusal::NotFound.into());
    }
    let week = scene.week(number)?;
    let rounds = app::rounds::list_rounds(desk, visit.viewer, club, season, number).await?;
    let proposed = rounds.iter().find(|round| round.published_at.is_none());
    let games = of_week(desk, visit, &scene, number).await?;
    let page = PairingDeskPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Board),
        may_propose: week.1 == Phase::ListsOpened,
        may_close: week.1 == Phase::Paired,
        round: proposed.map(|round| round.id.to_string()),
        pairs: match proposed {
            Some(round) => pairs(&scene, visit.t, round)?,
            None => Vec::new(),
        },
        open: games.iter().filter(|game| game.open).count(),
        games,
        week: WeekPanel::new(&scene, week, visit.t),
        told,
    };
    show_as(page.told.status(), &page)
}

fn pairs(scene: &SeasonScene, t: &Texts, round: &Round) -> Result<Vec<ProposedPair>, Refusal> {
    let proposal = round.proposal.proposal().map_err(Refusal::Broken)?;
    let called = |player: PlayerId| scene.handle(player).to_owned();
    let mut reasons = proposal
        .reasons
        .iter()
        .map(|reason| t.speech().paired(reason, &called));
    let nights = scene.week(round.week).map(|(week, _)| week.nights.clone());
    let nights = nights.unwrap_or_default();
    let mut pairs = Vec::new();
    for game in &round.proposal.games {
        let night = nights.get(usize::from(game.night));
        let night = night.map(|night| night.key.as_str()).unwrap_or_default();
        let place = format!("{night} {}", game.table);
        let players = [game.attacker, game.defender];
        pairs.push(pair(scene, round, players, place, reasons.next()));
    }
    for bye in &round.proposal.byes {
        pairs.push(ProposedPair {
            field: String::new(),
            place: String::new(),
            names: called(PlayerId(*bye)),
            sentences: reasons.next().unwrap_or_default(),
            order: "",
            is_bye: true,
        });
    }
    for players in &round.task.forbidden {
        pairs.push(pair(scene, round, *players, String::new(), None));
    }
    Ok(pairs)
}

fn pair(
    scene: &SeasonScene,
    round: &Round,
    [one, other]: [Uuid; 2],
    place: String,
    sentences: Option<Vec<String>>,
) -> ProposedPair {
    let same = |pair: &[Uuid; 2]| *pair == [one, other] || *pair == [other, one];
    let order = if round.task.pins.iter().any(same) {
        PINNED
    } else if round.task.forbidden.iter().any(same) {
        FORBIDDEN
    } else {
        ""
    };
    let handle = |player| scene.handle(PlayerId(player));
    ProposedPair {
        field: format!("pair {one} {other}"),
        place,
        names: format!("{} – {}", handle(one), handle(other)),
        sentences: sentences.unwrap_or_default(),
        order,
        is_bye: false,
    }
}
