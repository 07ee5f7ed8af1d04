//! The next season from one: the same rules, rhythm and nights on new days, and who comes along.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::seasons::{Carry, CreateSeasonFrom, LeftOut};
use app::{Desk, Fault, Reason, Refusal};
use askama::Template;
use chrono::NaiveDate;
use league::ids::{ClubId, SeasonId};
use league::season::SeasonState;

use super::address::{self, InSeason};
use super::answer::{PageAnswer, framed, go, show, show_as};
use super::fields::Fields;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::told::Told;
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "next_season.html")]
struct NextSeasonPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    name: String,
    first_day: String,
    other_weekdays: bool,
    scenarios: bool,
    carries: Vec<(&'static str, Phrase, bool)>,
    told: Told,
}
framed!(NextSeasonPage);

#[derive(Template)]
#[template(path = "next_season_made.html")]
struct NextSeasonMadePage {
    frame: Frame,
    t: &'static Texts,
    name: String,
    link: String,
    players: usize,
    left_out: Vec<(String, Phrase)>,
}
framed!(NextSeasonMadePage);

/// The form.
#[get("/clubs/{club}/seasons/{season}/next")]
pub async fn show_next_season(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    form(&desk, &visit, club, season, None, Told::default()).await
}

/// Makes the draft, and says who came along.
#[post("/clubs/{club}/seasons/{season}/next")]
pub async fn create_season_from(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    fields: Fields,
) -> PageAnswer {
    let (club, season) = path.ids();
    let told = match command(&fields) {
        Err(refusal) => Told::or_problem(refusal)?,
        Ok(command) => {
            let actor = visit.actor()?;
            match app::seasons::create_season_from(&desk, actor, club, season, command).await {
                Ok(next) if next.people.left_out.is_empty() => {
                    return Ok(go(&address::season(club, next.season.id)));
                }
                Ok(next) => {
                    return show(&NextSeasonMadePage {
                        frame: visit.frame(),
                        t: visit.t,
                        link: address::season(club, next.season.id),
                        name: next.season.name,
                        players: next.people.players.len(),
                        left_out: next
                            .people
                            .left_out
                            .into_iter()
                            .map(|(handle, why)| (handle, left_out(visit.t, why)))
                            .collect(),
                    });
                }
                Err(refusal) => Told::or_problem(refusal)?,
            }
        }
    };
    form(&desk, &visit, club, season, Some(&fields), told).await
}

fn command(fields: &Fields) -> Result<CreateSeasonFrom, Refusal> {
    let first_day: Option<NaiveDate> = fields.value("first_day");
    let first_day = first_day.ok_or_else(|| {
        let detail = "Name the first day of the new season.";
        let fault = Fault::new(Reason::Validation.code(), "/first_day", detail);
        Refusal::faults(Reason::Validation, detail, vec![fault])
    })?;
    let carry = CARRIES
        .into_iter()
        .find(|carry| carry.word() == fields.text("carry"));
    Ok(CreateSeasonFrom {
        name: fields.text("name").to_owned(),
        first_day,
        other_weekdays: fields.ticked("other_weekdays"),
        policy: None,
        scenarios: fields.ticked("scenarios"),
        carry: carry.unwrap_or(Carry::Players),
    })
}

const CARRIES: [Carry; 3] = [Carry::PlayersWithCollections, Carry::Players, Carry::Nobody];

async fn form(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    id: SeasonId,
    typed: Option<&Fields>,
    told: Told,
) -> PageAnswer {
    let t = visit.t;
    visit.actor()?;
    let scene = SeasonScene::load(desk, visit, club, id).await?;
    if !scene.runs() {
        return Err(Refusal::NotFound.into());
    }
    let over = scene.season.state == SeasonState::Ended;
    let chosen = typed.map_or(Carry::Players.word(), |fields| fields.text("carry"));
    let carries = CARRIES
        .into_iter()
        .filter(|carry| over || *carry != Carry::PlayersWithCollections);
    let page = NextSeasonPage {
        frame: visit.frame(),
        t,
        head: scene.head(visit, Tab::Ending),
        name: typed.map_or_else(String::new, |fields| fields.text("name").to_owned()),
        first_day: typed.map_or_else(String::new, |fields| fields.text("first_day").to_owned()),
        other_weekdays: typed.is_some_and(|fields| fields.ticked("other_weekdays")),
        scenarios: typed.is_none_or(|fields| fields.ticked("scenarios")),
        carries: carries
            .map(|carry| (carry.word(), carry_words(t, carry), carry.word() == chosen))
            .collect(),
        told,
    };
    show_as(page.told.status(), &page)
}

fn carry_words(t: &Texts, carry: Carry) -> Phrase {
    match carry {
        Carry::Nobody => t.desk.carry_nobody,
        Carry::Players => t.desk.carry_players,
        Carry::PlayersWithCollections => t.desk.carry_collections,
    }
}

fn left_out(t: &Texts, why: LeftOut) -> Phrase {
    match why {
        LeftOut::Withdrew => t.desk.left_withdrew,
        LeftOut::LeftTheClub => t.desk.left_club,
        LeftOut::FactionGone => t.desk.left_faction,
    }
}
