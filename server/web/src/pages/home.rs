//! The front page: to a visitor what this is, to a member their clubs.

use actix_web::web::Data;
use actix_web::{get, post};
use app::Desk;
use app::clubs::CreateClub;
use askama::Template;

use super::address;
use super::answer::{PageAnswer, framed, go, show_as};
use super::fields::Fields;
use super::roles::role_word;
use super::texts::Texts;
use super::told::Told;
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "home.html")]
struct HomePage {
    frame: Frame,
    t: &'static Texts,
    clubs: Option<Vec<ClubLine>>,
    seasons: Vec<SeasonLine>,
    told: Told,
    name: String,
    slug: String,
}
framed!(HomePage);

struct ClubLine {
    link: String,
    name: String,
    role: String,
}

/// A season that everybody may look at.
struct SeasonLine {
    link: String,
    name: String,
    club: String,
}

/// Newest public seasons that the front page leads to.
const SEASONS: u16 = 20;

/// The front page.
#[get("/")]
pub async fn show_home(desk: Data<Desk>, visit: Visit) -> PageAnswer {
    home(&desk, &visit, &Fields::default(), Told::default()).await
}

/// Founds a club.
#[post("/clubs")]
pub async fn found_club(desk: Data<Desk>, visit: Visit, fields: Fields) -> PageAnswer {
    let command = CreateClub {
        name: fields.text("name").to_owned(),
        slug: fields.text("slug").to_owned(),
    };
    match app::clubs::create_club(&desk, visit.actor()?, command).await {
        Ok(club) => Ok(go(&address::club(club.id))),
        Err(refusal) => home(&desk, &visit, &fields, Told::or_problem(refusal)?).await,
    }
}

async fn home(desk: &Desk, visit: &Visit, fields: &Fields, told: Told) -> PageAnswer {
    let clubs = match visit.viewer {
        None => None,
        Some(actor) => Some(app::accounts::find_account(desk, actor).await?.clubs),
    };
    let line = |(club, role): (app::clubs::Club, _)| ClubLine {
        link: address::club(club.id),
        name: club.name,
        role: role_word(visit.t, role).to_string(),
    };
    let found = app::seasons::list_public_seasons(desk, "", None, SEASONS).await?;
    let seasons = found.seasons.into_iter().map(|listed| SeasonLine {
        link: address::season(listed.club, listed.season),
        name: listed.name,
        club: listed.club_name,
    });
    let page = HomePage {
        seasons: seasons.collect(),
        frame: visit.frame(),
        t: visit.t,
        clubs: clubs.map(|clubs| clubs.into_iter().map(line).collect()),
        name: fields.text("name").to_owned(),
        slug: fields.text("slug").to_owned(),
        told,
    };
    show_as(page.told.status(), &page)
}
