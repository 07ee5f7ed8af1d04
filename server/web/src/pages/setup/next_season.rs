//! Page: the next season, with the rules and rhythm of this one, and who comes along.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::seasons::{Carry, CreateSeasonFrom, LeftOut};
use app::{App, Refusal};
use askama::Template;
use league::season::SeasonState;

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::form_reader::FormReader;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, render_page, render_page_with_status, see_other,
};
use crate::pages::frame::urls;
use crate::pages::season::context::{SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SignedInSeasonPage;
use crate::paths::SeasonPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "next_season.html")]
struct NextSeasonPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    name: String,
    first_day: String,
    other_weekdays: bool,
    scenarios: bool,
    carries: Vec<(&'static str, Cow<'static, str>, bool)>,
    errors: FormErrors,
}
page_template!(NextSeasonPage);

#[derive(Template)]
#[template(path = "next_season_made.html")]
struct NextSeasonMadePage {
    layout: Layout,
    t: Texts,
    name: String,
    link: String,
    players: usize,
    left_out: Vec<(String, Cow<'static, str>)>,
}
page_template!(NextSeasonMadePage);

#[get("/clubs/{club}/seasons/{season}/next")]
pub async fn show_next_season(page: SignedInSeasonPage) -> PageResult {
    form(&page, None, FormErrors::default()).await
}

/// Makes the draft, and says who came along.
#[post("/clubs/{club}/seasons/{season}/next")]
pub async fn create_season_from(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    fields: FormData,
) -> PageResult {
    let season = path.key();
    let errors = match parse_form(&fields, request.t) {
        Err(refusal) => FormErrors::from_refusal(refusal)?,
        Ok(command) => {
            let actor = request.actor()?;
            match app::seasons::create_season_from(&app, actor, season, command).await {
                Ok(next) if next.people.left_out.is_empty() => {
                    return Ok(see_other(&urls::season(next.season.key())));
                }
                Ok(next) => {
                    return render_page(&NextSeasonMadePage {
                        layout: request.layout(),
                        t: request.t,
                        link: urls::season(next.season.key()),
                        name: next.season.name,
                        players: next.people.players.len(),
                        left_out: next
                            .people
                            .left_out
                            .into_iter()
                            .map(|(handle, why)| (handle, left_out_label(request.t, why)))
                            .collect(),
                    });
                }
                Err(refusal) => FormErrors::from_refusal(refusal)?,
            }
        }
    };
    let page = SignedInSeasonPage::load(app, request, season).await?;
    form(&page, Some(&fields), errors).await
}

fn parse_form(fields: &FormData, t: Texts) -> Result<CreateSeasonFrom, Refusal> {
    let mut form = FormReader::new(fields);
    let command = CreateSeasonFrom {
        name: form.text("name"),
        first_day: form.date("first_day", &t.first_day()),
        other_weekdays: form.is_checked("other_weekdays"),
        policy: None,
        scenarios: form.is_checked("scenarios"),
        carry: form.choice(
            "carry",
            &t.carry(),
            CARRIES.map(|carry| (carry.word(), carry)),
        ),
    };
    form.finish(command)
}

const CARRIES: [Carry; 3] = [Carry::PlayersWithCollections, Carry::Players, Carry::Nobody];

async fn form(
    page: &SignedInSeasonPage,
    typed: Option<&FormData>,
    errors: FormErrors,
) -> PageResult {
    let (context, t) = (&page.context, page.t());
    if !context.can_run() {
        return Err(Refusal::NotFound.into());
    }
    let over = context.season.state == SeasonState::Ended;
    let chosen = typed.map_or(Carry::Players.word(), |fields| fields.text("carry"));
    let carries = CARRIES
        .into_iter()
        .filter(|carry| over || *carry != Carry::PlayersWithCollections);
    let next = NextSeasonPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Ending),
        name: typed.map_or_else(String::new, |fields| fields.typed("name").to_owned()),
        first_day: typed.map_or_else(String::new, |fields| fields.typed("first_day").to_owned()),
        other_weekdays: typed.is_some_and(|fields| fields.is_checked("other_weekdays")),
        scenarios: typed.is_none_or(|fields| fields.is_checked("scenarios")),
        carries: carries
            .map(|carry| (carry.word(), carry_label(t, carry), carry.word() == chosen))
            .collect(),
        errors,
    };
    render_page_with_status(next.errors.status(), &next)
}

fn carry_label(t: Texts, carry: Carry) -> Cow<'static, str> {
    match carry {
        Carry::Nobody => t.carry_nobody(),
        Carry::Players => t.carry_players(),
        Carry::PlayersWithCollections => t.carry_collections(),
    }
}

fn left_out_label(t: Texts, why: LeftOut) -> Cow<'static, str> {
    match why {
        LeftOut::Withdrew => t.left_withdrew(),
        LeftOut::LeftTheClub => t.left_club(),
        LeftOut::FactionGone => t.left_faction(),
    }
}
