//! A game's page: its result slip, reported, confirmed, disputed or ruled.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::results::{DisputeResult, Game, ReportResult, RuleResult};
use app::seasons::ScenarioSeen;
use app::{Actor, Desk, Reason, Refusal};
use askama::Template;
use league::ids::{ClubId, GameId, PlayerId, SeasonId};
use league::result::{Confirmation, ItemScore, Outcome, Slip};
use league::scenario::ScenarioSheet;
use league::side::Side;

use super::address::{self, InGame};
use super::answer::{PageAnswer, framed, show_as};
use super::csrf;
use super::fields::Fields;
use super::moment::Moment;
use super::pairings::{PairingRow, outcome_words, pairing, pairings};
use super::roles::judges;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::slip_form::{self, CountRow, Ending};
use super::texts::{Phrase, Texts};
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "game.html")]
struct GamePage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: u8,
    week_link: String,
    game: PairingRow,
    link: String,
    said: Vec<SaidRow>,
    legs: Vec<Vec<CountRow>>,
    may_report: bool,
    may_answer: bool,
    may_rule: bool,
    confirm_due: Option<Moment>,
    seen: String,
    key: String,
    reason: String,
    endings: Vec<Ending>,
    disputed: bool,
    told: Told,
}
framed!(GamePage);

/// One thing that was said about a game.
struct SaidRow {
    what: Phrase,
    by: String,
    outcome: String,
    legs: Vec<Vec<CountedRow>>,
    reason: String,
    at: Moment,
}

/// What a report counted of one item.
struct CountedRow {
    label: String,
    counts: [String; 2],
}

/// A game's page.
#[get("/clubs/{club}/seasons/{season}/games/{game}")]
pub async fn show_game(desk: Data<Desk>, visit: Visit, path: Path<InGame>) -> PageAnswer {
    game_page(
        &desk,
        &visit,
        path.ids(),
        &Fields::default(),
        Told::default(),
    )
    .await
}

/// Reports, confirms, disputes or rules.
#[post("/clubs/{club}/seasons/{season}/games/{game}")]
pub async fn answer_slip(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InGame>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, game) = path.ids();
    let done = act(&desk, &visit, path.ids(), &fields).await;
    go_or_tell(
        done,
        |()| address::game(club, season, game),
        async |told| game_page(&desk, &visit, path.ids(), &fields, told).await,
    )
    .await
}

type Place = (ClubId, SeasonId, GameId);

async fn act(
    desk: &Desk,
    visit: &Visit,
    (club, season, id): Place,
    fields: &Fields,
) -> Result<(), Refusal> {
    let actor: Actor = visit.viewer.ok_or(Refusal::SignInNeeded)?;
    let reason = fields.text("reason").to_owned();
    match fields.text("act") {
        "confirm" => {
            let seen = fields.value("seen");
            app::results::confirm_result(desk, actor, club, season, id, seen).await?;
        }
        "dispute" => {
            let command = DisputeResult {
                reason,
                counter: None,
            };
            app::results::dispute_result(desk, actor, club, season, id, command).await?;
        }
        what => {
            let game = app::results::find_game(desk, visit.viewer, club, season, id).await?;
            let sheet = sheet(desk, visit, club, season, &game).await?;
            let sheet = sheet.ok_or_else(|| {
                Refusal::rule(Reason::WeekState, "The scenario is not revealed yet.")
            })?;
            if slip_form::is_wrong(&sheet, fields) {
                return Err(Refusal::faults(Reason::Validation, "", Vec::new()));
            }
            let typed = slip_form::read(&sheet, fields);
            if what == "rule" {
                let command = RuleResult { typed, reason };
                app::results::rule_result(desk, actor, club, season, id, command).await?;
            } else {
                let key = fields.text("key").to_owned();
                let command = ReportResult { key, typed };
                app::results::report_result(desk, actor, club, season, id, command).await?;
            }
        }
    }
    Ok(())
}

/// The sheet of the game's week, if the viewer may see it.
async fn sheet(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    season: SeasonId,
    game: &Game,
) -> Result<Option<ScenarioSheet>, Refusal> {
    let seen = app::seasons::find_scenario(desk, visit.viewer, club, season, game.week).await;
    match seen {
        Ok(ScenarioSeen::Full(sheet)) => ScenarioSheet::try_from(*sheet)
            .map(Some)
            .map_err(|faults| Refusal::Broken(format!("a sheet that was kept: {faults:?}"))),
        Ok(ScenarioSeen::Title(_)) | Err(Refusal::NotFound) => Ok(None),
        Err(other) => Err(other),
    }
}

async fn game_page(
    desk: &Desk,
    visit: &Visit,
    (club, season, id): Place,
    fields: &Fields,
    told: Told,
) -> PageAnswer {
    let t = visit.t;
    let game = app::results::find_game(desk, visit.viewer, club, season, id).await?;
    let scene = SeasonScene::load(desk, visit, club, season).await?;
    let sheet = sheet(desk, visit, club, season, &game).await?;
    let side = own_side(&scene, &game);
    let row = pairing(&scene, t, &game);
    let names = [
        row.first.as_str(),
        row.second.as_deref().unwrap_or_default(),
    ];
    let page = GamePage {
        endings: slip_form::endings(t, names, fields),
        disputed: matches!(game.slip, Slip::Disputed { .. }),
        frame: visit.frame(),
        t,
        head: scene.head(visit, Tab::Week),
        week: game.week.number(),
        week_link: scene.week_link(game.week),
        game: row,
        link: address::game(club, season, id),
        said: said(&scene, visit, &game, sheet.as_ref()),
        legs: sheet
            .map(|sheet| slip_form::legs(&sheet, fields))
            .unwrap_or_default(),
        may_report: side.is_some() && takes_reports(&game.slip),
        may_answer: side.is_some_and(|side| answers(&game.slip, side)),
        may_rule: side.is_none() && judges(scene.role),
        confirm_due: match &game.slip {
            Slip::Reported { confirm_due, .. } => Some(scene.clock(t).until(*confirm_due)),
            _ => None,
        },
        seen: match &game.slip {
            Slip::Reported { report, .. } => report.at.to_rfc3339(),
            _ => String::new(),
        },
        key: match fields.sent("key") {
            Some(key) => key.to_owned(),
            None => csrf::draw().unwrap_or_default(),
        },
        reason: fields.text("reason").to_owned(),
        told,
    };
    show_as(page.told.status(), &page)
}

fn own_side(scene: &SeasonScene, game: &Game) -> Option<Side> {
    let own = scene.own.as_ref()?.id;
    let second = game.meeting.as_ref()?.second;
    if own == game.first {
        Some(Side::First)
    } else {
        (own == second).then_some(Side::Second)
    }
}

/// Whether a report may still decide: a dispute is for a referee.
fn takes_reports(slip: &Slip) -> bool {
    matches!(slip, Slip::Awaited | Slip::Reported { .. })
}

/// Whether the other side has reported and waits for this one.
fn answers(slip: &Slip, side: Side) -> bool {
    matches!(slip, Slip::Reported { report, .. } if report.by != side)
}

/// Everything that was said, first things first.
fn said(
    scene: &SeasonScene,
    visit: &Visit,
    game: &Game,
    sheet: Option<&ScenarioSheet>,
) -> Vec<SaidRow> {
    let t = visit.t;
    let clock = scene.clock(t);
    let name = |side: Side| match (side, game.meeting.as_ref()) {
        (Side::Second, Some(meeting)) => scene.handle(meeting.second).to_owned(),
        _ => scene.handle(game.first).to_owned(),
    };
    let reported = |report: &league::result::Report| SaidRow {
        what: t.slip_reported,
        by: name(report.by),
        outcome: outcome_words(t, &report.outcome),
        legs: counted(sheet, &report.outcome),
        reason: String::new(),
        at: clock.at(report.at),
    };
    match &game.slip {
        Slip::Awaited => Vec::new(),
        Slip::Reported { report, .. } => vec![reported(report)],
        Slip::Disputed { report, dispute } => {
            let counter = dispute.counter.as_ref();
            let disputed = SaidRow {
                what: t.slip_disputed,
                by: name(dispute.by),
                outcome: counter
                    .map(|said| outcome_words(t, &said.outcome))
                    .unwrap_or_default(),
                legs: counter
                    .map(|said| counted(sheet, &said.outcome))
                    .unwrap_or_default(),
                reason: dispute
                    .reason
                    .as_ref()
                    .map(|text| text.as_str().to_owned())
                    .unwrap_or_default(),
                at: clock.at(dispute.at),
            };
            vec![reported(report), disputed]
        }
        Slip::Confirmed { report, how, at } => {
            let confirmed = SaidRow {
                what: t.slip_confirmed,
                by: match how {
                    Confirmation::ByOpponent => name(report.by.other()),
                    Confirmation::BySilence => t.by_silence.to_string(),
                },
                outcome: String::new(),
                legs: Vec::new(),
                reason: String::new(),
                at: clock.at(*at),
            };
            vec![reported(report), confirmed]
        }
        Slip::Ruled(ruling) => vec![SaidRow {
            what: t.slip_ruled,
            by: t.role_referee_name.to_string(),
            outcome: outcome_words(t, &ruling.outcome),
            legs: counted(sheet, &ruling.outcome),
            reason: ruling.reason.as_str().to_owned(),
            at: clock.at(ruling.at),
        }],
    }
}

/// What was counted, leg by leg; an item of which nothing was typed is left out.
fn counted(sheet: Option<&ScenarioSheet>, outcome: &Outcome) -> Vec<Vec<CountedRow>> {
    let (Some(sheet), Outcome::Played(score)) = (sheet, outcome) else {
        return Vec::new();
    };
    let items = sheet.terms().items.as_slice();
    let row = |item: &ItemScore| {
        let known = items.iter().find(|known| known.key == item.item)?;
        let counts = Side::BOTH.map(|side| item.counts[side]);
        let typed = counts.iter().any(Option::is_some);
        let word = |count: Option<u32>| count.map_or_else(|| "–".to_owned(), |it| it.to_string());
        typed.then(|| CountedRow {
            label: known.label.to_string(),
            counts: counts.map(word),
        })
    };
    let legs = score.legs.iter();
    legs.map(|leg| leg.items.iter().filter_map(row).collect())
        .collect()
}

/// Every game of a week.
///
/// # Errors
/// When the server cannot tell.
pub async fn of_week(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
    week: league::week::WeekNo,
) -> Result<Vec<PairingRow>, Problem> {
    let (club, season) = (scene.season.club, scene.season.id);
    let games = app::results::list_games(desk, visit.viewer, club, season, Some(week)).await?;
    Ok(pairings(scene, visit.t, &games))
}

/// The week and row of every game of one player.
///
/// # Errors
/// When the server cannot tell.
pub async fn of_player(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
    player: PlayerId,
) -> Result<Vec<(u8, PairingRow)>, Problem> {
    let (club, season) = (scene.season.club, scene.season.id);
    let mut games = app::results::list_games(desk, visit.viewer, club, season, None).await?;
    games.retain(|game| game.has(player));
    games.sort_by_key(|game| game.week);
    let row = |game: &Game| (game.week.number(), pairing(scene, visit.t, game));
    Ok(games.iter().map(row).collect())
}
