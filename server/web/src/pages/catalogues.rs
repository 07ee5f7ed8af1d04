//! The catalogues of a club, for those who run its seasons.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::catalogues::CatalogueSource;
use app::{Actor, Desk, Refusal};
use askama::Template;
use document::catalogue::CatalogueDocument;
use league::ids::{CatalogueId, ClubId};

use super::address::{self, InClub};
use super::answer::{PageAnswer, framed, go, show_as};
use super::fields::{Fields, LongFields};
use super::texts::Texts;
use super::told::Told;
use super::visit::{Frame, Visit};
use crate::body;
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "catalogues.html")]
struct CataloguesPage {
    frame: Frame,
    t: &'static Texts,
    club_name: String,
    club_link: String,
    catalogues: Vec<(String, String, i32)>,
    name: String,
    text: String,
    chosen: String,
    told: Told,
}
framed!(CataloguesPage);

/// The catalogues of a club.
#[get("/clubs/{club}/catalogues")]
pub async fn show_catalogues(desk: Data<Desk>, visit: Visit, path: Path<InClub>) -> PageAnswer {
    catalogues(
        &desk,
        &visit,
        path.id(),
        None,
        &Fields::default(),
        Told::default(),
    )
    .await
}

/// Makes a catalogue with its first version, or imports another version of one.
#[post("/clubs/{club}/catalogues")]
pub async fn import_catalogue(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InClub>,
    LongFields(fields): LongFields,
) -> PageAnswer {
    let club = path.id();
    let mut chosen = fields.value("catalogue").map(CatalogueId);
    let told = match source(fields.text("text")) {
        Ok(source) => {
            match import(&desk, visit.actor()?, club, &mut chosen, &fields, source).await {
                Ok(()) => return Ok(go(&format!("{}/catalogues", address::club(club)))),
                Err(refusal) => Told::or_problem(refusal)?,
            }
        }
        Err(problem) => Told::of(&problem),
    };
    catalogues(&desk, &visit, club, chosen, &fields, told).await
}

/// JSON begins with a brace; anything else is a spreadsheet's CSV.
fn source(text: &str) -> Result<CatalogueSource, Problem> {
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
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    chosen: &mut Option<CatalogueId>,
    fields: &Fields,
    source: CatalogueSource,
) -> Result<(), Refusal> {
    let id = match *chosen {
        Some(id) => id,
        None => {
            let name = fields.text("name");
            let made = app::catalogues::create_catalogue(desk, actor, club, name).await?;
            *chosen = Some(made.id);
            made.id
        }
    };
    app::catalogues::create_catalogue_version(desk, actor, club, id, source).await?;
    Ok(())
}

async fn catalogues(
    desk: &Desk,
    visit: &Visit,
    id: ClubId,
    chosen: Option<CatalogueId>,
    fields: &Fields,
    told: Told,
) -> PageAnswer {
    let (club, _) = app::clubs::find_club(desk, visit.viewer, id).await?;
    let all = app::catalogues::list_catalogues(desk, visit.actor()?, id).await?;
    let line = |catalogue: app::catalogues::Catalogue| {
        (catalogue.id.to_string(), catalogue.name, catalogue.newest)
    };
    let page = CataloguesPage {
        frame: visit.frame(),
        t: visit.t,
        club_name: club.name,
        club_link: address::club(id),
        catalogues: all.into_iter().map(line).collect(),
        chosen: chosen.map(|id| id.to_string()).unwrap_or_default(),
        name: fields.text("name").to_owned(),
        text: fields.text("text").to_owned(),
        told,
    };
    show_as(page.told.status(), &page)
}
