//! A player's week: what is due, and whatever a player decides outside the list.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::{Desk, Refusal};
use askama::Template;
use league::ids::{ClubId, SeasonId};
use league::season::{Phase, SeasonState};

use super::address::{self, InSeason, InWeek};
use super::answer::{PageAnswer, framed, show_as};
use super::fields::Fields;
use super::games::of_week;
use super::moment::Moment;
use super::nudges::{Notice, notices};
use super::pairings::PairingRow;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};
use super::week_panel::{ScenarioPanel, WeekPanel, scenario};
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "mine.html")]
struct MinePage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    handle: String,
    weeks: Vec<MyWeek>,
    withdrawn: bool,
    running: bool,
    told: Told,
}
framed!(MinePage);

struct MyWeek {
    week: WeekPanel,
    scenario: ScenarioPanel,
    list: ListStanding,
    nights: Vec<(String, Moment, bool)>,
    paired: bool,
    /// One for each round of the week.
    games: Vec<PairingRow>,
    notices: Vec<Notice>,
}

impl MyWeek {
    /// Whether the player comes on no night of a week that is still to be paired.
    fn excused(&self) -> bool {
        !self.paired && !self.nights.is_empty() && self.nights.iter().all(|(_, _, comes)| !comes)
    }
}

enum ListStanding {
    Nothing,
    Draft,
    Sealed { points: u32, at: Moment },
}

/// A player's week.
#[get("/clubs/{club}/seasons/{season}/mine")]
pub async fn show_mine(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    mine_page(&desk, &visit, club, season, Told::default()).await
}

/// Says when the player can come.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/availability")]
pub async fn tell_availability(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let (actor, nights) = (visit.actor()?, fields.all("nights"));
    let done = app::seasons::tell_availability(&desk, actor, club, season, week, nights).await;
    told(&desk, &visit, club, season, done).await
}

/// Withdraws from the season.
#[post("/clubs/{club}/seasons/{season}/withdraw")]
pub async fn withdraw(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    _fields: Fields,
) -> PageAnswer {
    let (club, season) = path.ids();
    let actor = visit.actor()?;
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let player = scene.own.ok_or(Refusal::NotFound)?.id;
    let done = app::seasons::withdraw_player(&desk, actor, club, season, player).await;
    told(&desk, &visit, club, season, done.map(|_| ())).await
}

async fn told(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    season: SeasonId,
    done: Result<(), Refusal>,
) -> PageAnswer {
    let next = |()| format!("{}/mine", address::season(club, season));
    go_or_tell(done, next, async |told| {
        mine_page(desk, visit, club, season, told).await
    })
    .await
}

async fn mine_page(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    id: SeasonId,
    told: Told,
) -> PageAnswer {
    visit.actor()?;
    let scene = SeasonScene::load(desk, visit, club, id).await?;
    let own = scene.own.clone().ok_or(Refusal::NotFound)?;
    let mut weeks = Vec::new();
    for week in scene.current() {
        if own.plays_in(week.0.week) {
            weeks.push(my_week(desk, visit, &scene, week).await?);
        }
    }
    let page = MinePage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Mine),
        handle: own.handle,
        weeks,
        withdrawn: own.left_after.is_some(),
        running: scene.season.state == SeasonState::Started,
        told,
    };
    show_as(page.told.status(), &page)
}

async fn my_week(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
    week: &(app::seasons::Week, Phase),
) -> Result<MyWeek, Problem> {
    let (club, season, t) = (scene.season.club, scene.season.id, visit.t);
    let actor = visit.actor()?;
    let clock = scene.clock(t);
    let list = match app::lists::find_own_list(desk, actor, club, season, week.0.week).await {
        Ok(own) => match (own.sealed, own.draft) {
            (Some(sealed), _) => ListStanding::Sealed {
                points: sealed.points,
                at: clock.at(sealed.sealed_at),
            },
            (None, Some(_)) => ListStanding::Draft,
            (None, None) => ListStanding::Nothing,
        },
        Err(Refusal::NotFound) => ListStanding::Nothing,
        Err(other) => return Err(other.into()),
    };
    let games = of_week(desk, visit, scene, week.0.week).await?;
    let coming = match scene.season.state {
        SeasonState::Started => {
            app::seasons::find_availability(desk, actor, club, season, week.0.week).await?
        }
        SeasonState::Draft | SeasonState::Ended => Vec::new(),
    };
    let nights = week.0.nights.iter().map(|night| {
        let comes = coming.contains(&night.key);
        (night.key.clone(), clock.at(night.begins.1), comes)
    });
    Ok(MyWeek {
        scenario: scenario(desk, visit, scene, &week.0).await?,
        nights: nights.collect(),
        list,
        notices: notices(desk, actor, scene, week.0.week, t).await?,
        games: games.into_iter().filter(|game| game.mine).collect(),
        paired: week.1 >= Phase::Paired,
        week: WeekPanel::new(scene, week, t),
    })
}
