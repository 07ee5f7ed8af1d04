//! Page: the editor of a week's scenario sheet, for those who run the season.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::seasons::{RevealAt, UpdateScenario};
use app::{App, Refusal};
use askama::Template;
use document::season::scenario::ScenarioSheetDocument;
use league::season::RevealTime;
use league::week::WeekNo;

use super::panel::WeekPanel;
use super::scenario_form;
use crate::body;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::form_reader::FormReader;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, render_page_with_status, see_other,
};
use crate::pages::frame::urls;
use crate::pages::season::context::{SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SignedInSeasonPage;
use crate::paths::WeekPath;
use crate::problem::Problem;
use messages::Texts;

#[derive(Template)]
#[template(path = "scenario_editor.html")]
struct ScenarioEditorPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    form: ScenarioForm,
    rows: Vec<u8>,
    sheet: String,
    title_later: bool,
    full_later: bool,
    errors: FormErrors,
}
page_template!(ScenarioEditorPage);

/// The fields, each as typed, as kept, or by its default.
struct ScenarioForm(FormData);

impl ScenarioForm {
    fn get(&self, name: &str) -> &str {
        self.0.typed(name)
    }

    /// What stands in a part of a row.
    fn item(&self, row: &u8, part: &str) -> &str {
        self.get(&scenario_form::name(*row, part))
    }
}

/// The form of a sheet.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/sheet")]
pub async fn show_scenario_editor(page: SignedInSeasonPage, path: Path<WeekPath>) -> PageResult {
    sheet_page(&page, path.key()?.week, None, FormErrors::default()).await
}

/// Saves a sheet and when it is revealed.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/sheet")]
pub async fn save_scenario(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let errors = match parse_form(&fields, request.t) {
        Err(problem) => FormErrors::from_problem(&problem),
        Ok(command) => {
            let actor = request.actor()?;
            match app::seasons::update_scenario(&app, actor, week, command).await {
                Ok(_) => return Ok(see_other(&urls::week(week))),
                Err(refusal) => FormErrors::from_refusal(refusal)?,
            }
        }
    };
    let page = SignedInSeasonPage::load(app, request, week.season).await?;
    sheet_page(&page, week.week, Some(&fields), errors).await
}

/// From the fields, or as a whole where it was written as data.
fn parse_form(fields: &FormData, t: Texts) -> Result<UpdateScenario, Problem> {
    let sheet: ScenarioSheetDocument = match fields.text("sheet") {
        "" => scenario_form::parse_sheet(fields, t)?,
        data => body::parse(data.as_bytes())?,
    };
    let mut form = FormReader::new(fields);
    let times = [
        ("announcement", RevealAt::Announcement),
        (LISTS_OPENED, RevealAt::ListsOpened),
    ];
    let command = UpdateScenario {
        sheet,
        title: form.choice("title", &t.sheet_title_when(), times),
        full: form.choice("full", &t.sheet_full_when(), times),
    };
    Ok(form.finish(command)?)
}

const LISTS_OPENED: &str = "lists_opened";

/// Whether it is revealed with the lists: as chosen in the form, else as kept.
fn later(typed: Option<&FormData>, name: &str, kept: RevealTime) -> bool {
    match typed {
        Some(fields) => fields.text(name) == LISTS_OPENED,
        None => kept == RevealTime::ListsOpened,
    }
}

async fn sheet_page(
    page: &SignedInSeasonPage,
    week: WeekNo,
    typed: Option<&FormData>,
    errors: FormErrors,
) -> PageResult {
    let (context, t) = (&page.context, page.t());
    if !context.can_run() {
        return Err(Refusal::NotFound.into());
    }
    let week = context.week(week)?;
    let kept = week.0.sheet.as_ref();
    let plain = kept.and_then(|sheet| scenario_form::fields(sheet, t));
    let data = match (typed, kept, &plain) {
        (Some(fields), _, _) => fields.typed("sheet").to_owned(),
        (None, Some(sheet), None) => serde_json::to_string_pretty(sheet)
            .map_err(|cause| Refusal::Internal(cause.to_string()))?,
        (None, _, _) => String::new(),
    };
    let nothing = FormData::default();
    let fields = typed.or(plain.as_ref()).unwrap_or(&nothing);
    let editor = ScenarioEditorPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Board),
        form: ScenarioForm(scenario_form::with_defaults(fields, t)),
        rows: (1..=scenario_form::ITEMS).collect(),
        sheet: data,
        title_later: later(typed, "title", week.0.title_reveal),
        full_later: later(typed, "full", week.0.full_reveal),
        week: WeekPanel::new(context, week, t),
        errors,
    };
    render_page_with_status(editor.errors.status(), &editor)
}
