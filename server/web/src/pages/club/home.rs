//! Page: the front page. For a visitor what this is, for a member their clubs.

use actix_web::web::Data;
use actix_web::{get, post};
use app::App;
use app::clubs::CreateClub;
use askama::Template;

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, render_page_with_status, see_other,
};
use crate::pages::frame::urls;
use crate::pages::words::roles::role_label;
use messages::Texts;

#[derive(Template)]
#[template(path = "home.html")]
struct HomePage {
    layout: Layout,
    t: Texts,
    clubs: Option<Vec<ClubLine>>,
    seasons: Vec<SeasonLine>,
    errors: FormErrors,
    name: String,
    slug: String,
}
page_template!(HomePage);

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

#[get("/")]
pub async fn show_home(app: Data<App>, request: PageRequest) -> PageResult {
    home(&app, &request, &FormData::default(), FormErrors::default()).await
}

#[post("/clubs")]
pub async fn create_club(app: Data<App>, request: PageRequest, fields: FormData) -> PageResult {
    let command = CreateClub {
        name: fields.text("name").to_owned(),
        slug: fields.text("slug").to_owned(),
    };
    match app::clubs::create_club(&app, request.actor()?, command).await {
        Ok(club) => Ok(see_other(&urls::club(club.id))),
        Err(refusal) => home(&app, &request, &fields, FormErrors::from_refusal(refusal)?).await,
    }
}

async fn home(
    app: &App,
    request: &PageRequest,
    fields: &FormData,
    errors: FormErrors,
) -> PageResult {
    let clubs = match request.viewer {
        None => None,
        Some(actor) => Some(app::accounts::find_account(app, actor).await?.clubs),
    };
    let line = |(club, role): (app::clubs::Club, _)| ClubLine {
        link: urls::club(club.id),
        name: club.name,
        role: role_label(request.t, role).to_string(),
    };
    let found = app::seasons::list_public_seasons(app, "", None, SEASONS).await?;
    let seasons = found.seasons.into_iter().map(|listed| SeasonLine {
        link: urls::season(listed.season),
        name: listed.name,
        club: listed.club_name,
    });
    let page = HomePage {
        seasons: seasons.collect(),
        layout: request.layout(),
        t: request.t,
        clubs: clubs.map(|clubs| clubs.into_iter().map(line).collect()),
        name: fields.typed("name").to_owned(),
        slug: fields.typed("slug").to_owned(),
        errors,
    };
    render_page_with_status(page.errors.status(), &page)
}
