//! Page: the catalogues of a club, for those who run its seasons.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::catalogues::CatalogueSource;
use app::{Actor, App, Refusal};
use askama::Template;
use document::catalogue::CatalogueDocument;
use league::ids::{CatalogueId, ClubId};

use crate::body;
use crate::pages::frame::form_data::{FormData, LargeFormData};
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::form_reader::FormReader;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, render_page_with_status, see_other,
};
use crate::pages::frame::urls;
use crate::paths::ClubPath;
use crate::problem::Problem;
use messages::Texts;

#[derive(Template)]
#[template(path = "catalogues.html")]
struct CataloguesPage {
    layout: Layout,
    t: Texts,
    club_name: String,
    club_link: String,
    catalogues: Vec<(String, String, i32)>,
    name: String,
    text: String,
    chosen: String,
    errors: FormErrors,
}
page_template!(CataloguesPage);

/// The catalogues of a club.
#[get("/clubs/{club}/catalogues")]
pub async fn show_catalogues(
    app: Data<App>,
    request: PageRequest,
    path: Path<ClubPath>,
) -> PageResult {
    catalogues(
        &app,
        &request,
        path.id(),
        None,
        &FormData::default(),
        FormErrors::default(),
    )
    .await
}

/// Makes a catalogue with its first version, or imports another version of one.
#[post("/clubs/{club}/catalogues")]
pub async fn import_catalogue(
    app: Data<App>,
    request: PageRequest,
    path: Path<ClubPath>,
    LargeFormData(fields): LargeFormData,
) -> PageResult {
    let club = path.id();
    let mut form = FormReader::new(&fields);
    let chosen = form.optional_id("catalogue", &request.t.catalogue());
    let mut chosen = form.finish(chosen)?.map(CatalogueId);
    let errors = match parse_source(fields.text("text")) {
        Ok(source) => {
            match import(&app, request.actor()?, club, &mut chosen, &fields, source).await {
                Ok(()) => return Ok(see_other(&format!("{}/catalogues", urls::club(club)))),
                Err(refusal) => FormErrors::from_refusal(refusal)?,
            }
        }
        Err(problem) => FormErrors::from_problem(&problem),
    };
    catalogues(&app, &request, club, chosen, &fields, errors).await
}

/// JSON begins with a brace; anything else is a spreadsheet's CSV.
fn parse_source(text: &str) -> Result<CatalogueSource, Problem> {
    if text.starts_with('{') {
        let document: CatalogueDocument = body::parse(text.as_bytes())?;
        Ok(CatalogueSource::Json(document))
    } else {
        Ok(CatalogueSource::Csv(text.as_bytes().to_vec()))
    }
}

/// Into the chosen catalogue, else into a new one, which is the chosen one from then on: whoever mends
/// the text and sends it again does not meet the name as taken.
async fn import(
    app: &App,
    actor: Actor,
    club: ClubId,
    chosen: &mut Option<CatalogueId>,
    fields: &FormData,
    source: CatalogueSource,
) -> Result<(), Refusal> {
    let id = match *chosen {
        Some(id) => id,
        None => {
            let name = fields.text("name");
            let made = app::catalogues::create_catalogue(app, actor, club, name).await?;
            *chosen = Some(made.id);
            made.id
        }
    };
    app::catalogues::create_catalogue_version(app, actor, club, id, source).await?;
    Ok(())
}

async fn catalogues(
    app: &App,
    request: &PageRequest,
    id: ClubId,
    chosen: Option<CatalogueId>,
    fields: &FormData,
    errors: FormErrors,
) -> PageResult {
    let (club, _) = app::clubs::find_club(app, request.viewer, id).await?;
    let all = app::catalogues::list_catalogues(app, request.actor()?, id).await?;
    let line = |catalogue: app::catalogues::CatalogueRow| {
        (catalogue.id.to_string(), catalogue.name, catalogue.newest)
    };
    let page = CataloguesPage {
        layout: request.layout(),
        t: request.t,
        club_name: club.name,
        club_link: urls::club(id),
        catalogues: all.into_iter().map(line).collect(),
        chosen: chosen.map_or_else(String::new, |id| id.to_string()),
        name: fields.typed("name").to_owned(),
        text: fields.typed("text").to_owned(),
        errors,
    };
    render_page_with_status(page.errors.status(), &page)
}
