//! A list as pasted text: read line by line, taken over when the player says so.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::Desk;
use askama::Template;
use document::list::ArmyListDocument;
use league::lists::EntryKey;
use league::lists::reader::{Certainty, Meaning, Part, ReadLine, Reading};

use super::address::{self, InWeek};
use super::answer::{PageAnswer, framed, go, show_as};
use super::factions::faction_name;
use super::fields::Fields;
use super::list_form;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::speech::Said;
use super::texts::{Phrase, Texts};
use super::told::Told;
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;

#[derive(Template)]
#[template(path = "paste.html")]
struct PastePage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    text: String,
    lines: Option<Vec<ReadLineRow>>,
    has_list: bool,
    findings: Vec<Said>,
    told: Told,
}
framed!(PastePage);

struct ReadLineRow {
    number: usize,
    text: String,
    certainty: Phrase,
    sure: bool,
    parts: Vec<String>,
}

/// The form for a text.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/list/paste")]
pub async fn show_paste(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    let nothing = Fields::default();
    paste_page(
        &desk,
        &visit,
        path.into_inner(),
        &nothing,
        None,
        Told::default(),
    )
    .await
}

/// Reads a text; takes its list as the draft when asked to.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/list/paste")]
pub async fn read_paste(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let (actor, text) = (visit.actor()?, fields.text("text"));
    let read = app::lists::read_list(&desk, actor, club, season, week, text.to_owned()).await;
    let (reading, told) = match read {
        Ok(reading) => (Some(reading), Told::default()),
        Err(refusal) => (None, Told::or_problem(refusal)?),
    };
    let list = reading.as_ref().and_then(|reading| reading.list.as_ref());
    if let (Some(list), "take") = (list, fields.text("act")) {
        let before = app::lists::find_list_desk(&desk, actor, club, season, week).await?;
        let revision = before.own.map(|own| own.draft_revision).filter(|r| *r > 0);
        let draft = ArmyListDocument::from(list);
        app::lists::save_draft(&desk, actor, club, season, week, revision, draft).await?;
        return Ok(go(&format!("{}/list", address::week(club, season, week))));
    }
    paste_page(&desk, &visit, path.into_inner(), &fields, reading, told).await
}

async fn paste_page(
    desk: &Desk,
    visit: &Visit,
    path: InWeek,
    fields: &Fields,
    reading: Option<Reading>,
    told: Told,
) -> PageAnswer {
    visit.actor()?;
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(desk, visit, club, season).await?;
    let t = visit.t;
    let list = reading.as_ref().and_then(|reading| reading.list.as_ref());
    let names = list.map(|list| list_form::names(&ArmyListDocument::from(list)));
    let named = |key: &EntryKey| names.as_ref()?.get(key.as_str()).cloned();
    let page = PastePage {
        frame: visit.frame(),
        t,
        head: scene.head(visit, Tab::Mine),
        week: WeekPanel::new(&scene, scene.week(number)?, t),
        text: fields.text("text").to_owned(),
        has_list: list.is_some(),
        findings: reading
            .iter()
            .flat_map(|reading| &reading.findings)
            .map(|finding| Said::finding(t.speech(), finding, &named))
            .collect(),
        lines: reading.map(|reading| {
            reading
                .lines
                .iter()
                .map(|line| line_view(t, line))
                .collect()
        }),
        told,
    };
    show_as(page.told.status(), &page)
}

fn line_view(t: &Texts, line: &ReadLine) -> ReadLineRow {
    let certainty = match line.certainty() {
        Certainty::Understood => t.sure,
        Certainty::Guessed => t.guessed,
        Certainty::NotUnderstood => t.not_understood,
    };
    ReadLineRow {
        number: line.number,
        text: line.text.clone(),
        certainty,
        sure: line.certainty() == Certainty::Understood,
        parts: line.parts.iter().map(|part| part_words(t, part)).collect(),
    }
}

fn part_words(t: &Texts, part: &Part) -> String {
    let meaning = match &part.meaning {
        Meaning::Faction(key) => format!("{} {}", t.means_faction, faction_name(key.as_str())),
        Meaning::Kind(key) => format!("{} {}", t.means_kind, faction_name(key.as_str())),
        Meaning::Unit {
            name,
            models,
            entries,
            ..
        } => match entries.len() {
            0 | 1 => t.means_unit.with_two(name, models),
            units => t.means_units.with_all(&[&units, name, models]),
        },
        Meaning::ForeignUnit { faction, name } => t
            .means_foreign_unit
            .with_two(name, faction_name(faction.as_str())),
        Meaning::Option { name, .. } => t.means_option.with(name),
        Meaning::Models(models) => t.means_models.with(models),
        Meaning::Times(times) => t.means_times.with(times),
        Meaning::Joins(key) => t.means_joins.with(faction_name(key.as_str())),
        Meaning::StatedPoints(points) | Meaning::StatedTotal(points) => {
            t.means_points.with(points.get())
        }
        Meaning::StatedCap(points) => t.cap_of.with(points.get()),
        Meaning::Label => t.means_label.to_string(),
        Meaning::Nothing => format!("“{}”: {}", part.text, t.means_nothing),
    };
    if part.alternatives.is_empty() {
        meaning
    } else {
        format!(
            "{meaning} ({})",
            t.could_be.with(part.alternatives.join(", "))
        )
    }
}
