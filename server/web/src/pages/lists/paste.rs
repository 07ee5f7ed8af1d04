//! Page: a list as pasted text, parsed line by line, taken over when the player says so.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::App;
use askama::Template;
use document::lists::army_list::ArmyListDocument;
use league::lists::reader::{Certainty, LinePart, Meaning, ReadLine, Reading};
use league::week::WeekNo;

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, render_page_with_status, see_other,
};
use crate::pages::frame::urls;
use crate::pages::season::context::{SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SignedInSeasonPage;
use crate::pages::week::panel::WeekPanel;
use crate::pages::words::factions::faction_name;
use crate::paths::WeekPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "paste.html")]
struct PastePage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    text: String,
    lines: Option<Vec<ReadLineRow>>,
    has_list: bool,
    findings: Vec<String>,
    errors: FormErrors,
}
page_template!(PastePage);

struct ReadLineRow {
    number: usize,
    text: String,
    certainty: Cow<'static, str>,
    sure: bool,
    parts: Vec<String>,
}

/// The form for a text.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/list/paste")]
pub async fn show_paste(page: SignedInSeasonPage, path: Path<WeekPath>) -> PageResult {
    let (week, nothing) = (path.key()?.week, FormData::default());
    paste_page(&page, week, &nothing, None, FormErrors::default()).await
}

/// Reads a text; takes its list as the draft when asked to.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/list/paste")]
pub async fn read_paste(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let (actor, text) = (request.actor()?, fields.text("text"));
    let read = app::lists::read_list(&app, actor, week, text.to_owned()).await;
    let (reading, errors) = match read {
        Ok(reading) => (Some(reading), FormErrors::default()),
        Err(refusal) => (None, FormErrors::from_refusal(refusal)?),
    };
    let list = reading.as_ref().and_then(|reading| reading.list.as_ref());
    if let (Some(list), "take") = (list, fields.text("act")) {
        let before = app::lists::find_list_editor(&app, actor, week).await?;
        let revision = before
            .own
            .map(|own| own.draft_revision.into())
            .filter(|r| *r > 0);
        let draft = ArmyListDocument::from(list);
        app::lists::save_draft(&app, actor, week, revision, draft).await?;
        return Ok(see_other(&format!("{}/list", urls::week(week))));
    }
    let page = SignedInSeasonPage::load(app, request, week.season).await?;
    paste_page(&page, week.week, &fields, reading, errors).await
}

async fn paste_page(
    page: &SignedInSeasonPage,
    week: WeekNo,
    fields: &FormData,
    reading: Option<Reading>,
    errors: FormErrors,
) -> PageResult {
    let (context, t) = (&page.context, page.t());
    let list = reading.as_ref().and_then(|reading| reading.list.as_ref());
    let paste = PastePage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Mine),
        week: WeekPanel::new(context, context.week(week)?, t),
        text: fields.typed("text").to_owned(),
        has_list: list.is_some(),
        findings: reading
            .iter()
            .flat_map(|reading| &reading.findings)
            .map(|finding| t.say(finding.message()))
            .collect(),
        lines: reading.map(|reading| {
            reading
                .lines
                .iter()
                .map(|line| line_view(t, line))
                .collect()
        }),
        errors,
    };
    render_page_with_status(paste.errors.status(), &paste)
}

fn line_view(t: Texts, line: &ReadLine) -> ReadLineRow {
    let certainty = match line.certainty() {
        Certainty::Understood => t.sure(),
        Certainty::Guessed => t.guessed(),
        Certainty::NotUnderstood => t.not_understood(),
    };
    ReadLineRow {
        number: line.number,
        text: line.text.clone(),
        certainty,
        sure: line.certainty() == Certainty::Understood,
        parts: line.parts.iter().map(|part| part_words(t, part)).collect(),
    }
}

fn part_words(t: Texts, part: &LinePart) -> String {
    let meaning = match &part.meaning {
        Meaning::Faction(key) => t.means_faction(faction_name(key.as_str())),
        Meaning::Kind(key) => t.means_kind(faction_name(key.as_str())),
        Meaning::Unit {
            name,
            models,
            entries,
            ..
        } => match entries.len() {
            0 | 1 => t.means_unit(name, models),
            units => t.means_units(units, name, models),
        },
        Meaning::ForeignUnit { faction, name } => {
            t.means_foreign_unit(name, faction_name(faction.as_str()))
        }
        Meaning::Option { name, .. } => t.means_option(name),
        Meaning::Models(models) => t.means_models(models),
        Meaning::Times(times) => t.means_times(times),
        Meaning::Joins(key) => t.means_joins(faction_name(key.as_str())),
        Meaning::StatedPoints(points) | Meaning::StatedTotal(points) => {
            t.means_points(points.get())
        }
        Meaning::StatedCap(points) => t.cap_of(points.get()),
        Meaning::Label => t.means_label().into_owned(),
        Meaning::Nothing => t.means_nothing(&part.text),
    };
    if part.alternatives.is_empty() {
        meaning
    } else {
        let alternatives: Vec<String> = part.alternatives.iter().map(|it| t.say(it)).collect();
        t.could_be(meaning, alternatives.join(", "))
    }
}
