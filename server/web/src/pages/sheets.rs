//! Writing a week's scenario sheet, for those who run the season.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::seasons::{RevealAt, UpdateScenario};
use app::{Desk, Refusal};
use askama::Template;
use document::scenario::ScenarioSheetDocument;
use league::season::Reveal;

use super::address::{self, InWeek};
use super::answer::{PageAnswer, framed, go, show_as};
use super::fields::Fields;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::sheet_form;
use super::texts::Texts;
use super::told::Told;
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;
use crate::body;
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "sheet.html")]
struct SheetPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    form: SheetForm,
    rows: Vec<u8>,
    sheet: String,
    title_later: bool,
    full_later: bool,
    told: Told,
}
framed!(SheetPage);

/// The fields, each as typed, as kept, or by its default.
struct SheetForm {
    fields: Fields,
    t: &'static Texts,
}

impl SheetForm {
    fn get(&self, name: &str) -> String {
        sheet_form::get(&self.fields, name, self.t)
    }

    /// What stands in a part of a row.
    fn item(&self, row: &u8, part: &str) -> String {
        self.get(&sheet_form::name(*row, part))
    }
}

/// The form of a sheet.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/sheet")]
pub async fn show_sheet(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    sheet_page(&desk, &visit, path.into_inner(), None, Told::default()).await
}

/// Saves a sheet and when it is revealed.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/sheet")]
pub async fn save_sheet(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let told = match command(&fields, visit.t) {
        Err(problem) => Told::of(&problem),
        Ok(command) => {
            let actor = visit.actor()?;
            match app::seasons::update_scenario(&desk, actor, club, season, week, command).await {
                Ok(_) => return Ok(go(&address::week(club, season, week))),
                Err(refusal) => Told::or_problem(refusal)?,
            }
        }
    };
    sheet_page(&desk, &visit, path.into_inner(), Some(&fields), told).await
}

/// From the fields, or as a whole where it was written as data.
fn command(fields: &Fields, t: &Texts) -> Result<UpdateScenario, Problem> {
    let sheet: ScenarioSheetDocument = match fields.text("sheet") {
        "" => sheet_form::document(fields, t),
        data => body::parse(data.as_bytes())?,
    };
    Ok(UpdateScenario {
        sheet,
        title: reveal(fields.text("title")),
        full: reveal(fields.text("full")),
    })
}

fn reveal(word: &str) -> RevealAt {
    if word == "lists_opened" {
        RevealAt::ListsOpened
    } else {
        RevealAt::Announcement
    }
}

/// Whether it is revealed with the lists: as chosen in the form, else as kept.
fn later(typed: Option<&Fields>, name: &str, kept: Reveal) -> bool {
    match typed {
        Some(fields) => reveal(fields.text(name)) == RevealAt::ListsOpened,
        None => kept == Reveal::ListsOpened,
    }
}

async fn sheet_page(
    desk: &Desk,
    visit: &Visit,
    path: InWeek,
    typed: Option<&Fields>,
    told: Told,
) -> PageAnswer {
    visit.actor()?;
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(desk, visit, club, season).await?;
    if !scene.runs() {
        return Err(Refusal::NotFound.into());
    }
    let week = scene.week(number)?;
    let kept = week.0.sheet.as_ref();
    let plain = kept.and_then(|sheet| sheet_form::fields(sheet, visit.t));
    let data = match (typed, kept, &plain) {
        (Some(fields), _, _) => fields.text("sheet").to_owned(),
        (None, Some(sheet), None) => serde_json::to_string_pretty(sheet).unwrap_or_default(),
        (None, _, _) => String::new(),
    };
    let fields = typed.cloned().or(plain).unwrap_or_default();
    let page = SheetPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Board),
        form: SheetForm { fields, t: visit.t },
        rows: (1..=sheet_form::ITEMS).collect(),
        sheet: data,
        title_later: later(typed, "title", week.0.title_reveal),
        full_later: later(typed, "full", week.0.full_reveal),
        week: WeekPanel::new(&scene, week, visit.t),
        told,
    };
    show_as(page.told.status(), &page)
}
