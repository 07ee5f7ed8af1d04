//! The results of a season for those who rule on them: whatever waits for somebody, the most urgent
//! first.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::results::Game;
use app::{Desk, Refusal};
use askama::Template;
use league::painting::ClaimState;
use league::result::Slip;
use league::time::Instant;

use super::address::InSeason;
use super::answer::{PageAnswer, framed, show};
use super::moment::Moment;
use super::pairings::{PairingRow, pairings};
use super::roles::judges;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "results_desk.html")]
struct ResultsDeskPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    heaps: Vec<Heap>,
    claims: usize,
    runs: bool,
}
framed!(ResultsDeskPage);

/// Games that wait for the same thing.
struct Heap {
    key: &'static str,
    title: Phrase,
    text: Phrase,
    games: Vec<WaitingGame>,
    urgent: bool,
}

struct WaitingGame {
    week: u8,
    game: PairingRow,
    since: Option<Moment>,
}

/// What a game waits for, the most urgent first.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Waits {
    Ruling,
    Overdue,
    Report,
    Answer,
}

/// The results desk.
#[get("/clubs/{club}/seasons/{season}/results")]
pub async fn show_results_desk(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    visit.actor()?;
    let (club, season) = path.ids();
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    if !judges(scene.role) {
        return Err(Refusal::NotFound.into());
    }
    let games = app::results::list_games(&desk, visit.viewer, club, season, None).await?;
    let claims = app::painting::list_claims(&desk, visit.viewer, club, season, None).await?;
    let now = desk.now().await?;
    let t = visit.t;
    let heap = |key, waits, title, text| Heap {
        key,
        title,
        text,
        games: waiting(&scene, t, &games, now, waits),
        urgent: matches!(waits, Waits::Ruling | Waits::Overdue),
    };
    let heaps = [
        heap(
            "ruling",
            Waits::Ruling,
            t.desk.disputed,
            t.desk.disputed_text,
        ),
        heap(
            "overdue",
            Waits::Overdue,
            t.desk.overdue,
            t.desk.overdue_text,
        ),
        heap(
            "report",
            Waits::Report,
            t.desk.unreported,
            t.desk.unreported_text,
        ),
        heap(
            "answer",
            Waits::Answer,
            t.desk.unanswered,
            t.desk.unanswered_text,
        ),
    ];
    show(&ResultsDeskPage {
        frame: visit.frame(),
        t,
        head: scene.head(&visit, Tab::Results),
        heaps: heaps
            .into_iter()
            .filter(|heap| !heap.games.is_empty())
            .collect(),
        claims: claims
            .iter()
            .filter(|claim| matches!(claim.state, ClaimState::Open))
            .count(),
        runs: scene.runs(),
    })
}

fn waiting(
    scene: &SeasonScene,
    t: &'static Texts,
    games: &[Game],
    now: Instant,
    waits: Waits,
) -> Vec<WaitingGame> {
    let clock = scene.clock(t);
    let fitting = games
        .iter()
        .filter(|game| waits_for(scene, game, now) == Some(waits));
    let mut found: Vec<WaitingGame> = fitting
        .filter_map(|game| {
            Some(WaitingGame {
                week: game.week.number(),
                game: pairings(scene, t, std::slice::from_ref(game)).pop()?,
                since: match &game.slip {
                    Slip::Disputed { dispute, .. } => Some(clock.short(dispute.at)),
                    Slip::Reported { confirm_due, .. } => Some(clock.short(*confirm_due)),
                    _ => {
                        let week = scene.week(game.week).ok();
                        week.map(|(week, _)| clock.short(week.facts.play_until_at))
                    }
                },
            })
        })
        .collect();
    found.sort_by(|one, other| {
        let key = |row: &WaitingGame| (row.week, row.game.night.clone(), row.game.table);
        key(one).cmp(&key(other))
    });
    found
}

fn waits_for(scene: &SeasonScene, game: &Game, now: Instant) -> Option<Waits> {
    game.meeting.as_ref()?;
    match &game.slip {
        Slip::Disputed { .. } => Some(Waits::Ruling),
        Slip::Reported { .. } => Some(Waits::Answer),
        Slip::Awaited => {
            let (week, _) = scene.week(game.week).ok()?;
            let over = now >= week.facts.play_until_at;
            Some(if over { Waits::Overdue } else { Waits::Report })
        }
        Slip::Confirmed { .. } | Slip::Ruled(_) => None,
    }
}
