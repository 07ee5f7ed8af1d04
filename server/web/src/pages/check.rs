//! What a check says of a list: on the list's page, and alone while the form is changed.

use actix_web::post;
use actix_web::web::{Data, Path};
use app::Desk;
use askama::Template;
use league::lists::{ArmyList, Cut, CutStep, EntryKey, Report, Severity};

use super::address::InWeek;
use super::answer::{PageAnswer, fragment};
use super::factions::faction_name;
use super::fields::Fields;
use super::list_form::{self, EntryNames};
use super::texts::Texts;
use super::texts::speech::Said;
use super::visit::Visit;

#[derive(Template)]
#[template(path = "check.html")]
pub struct CheckPanel {
    t: &'static Texts,
    cap: u32,
    total: u32,
    left: u32,
    over: Option<u32>,
    share: u32,
    parts: Vec<(String, u32)>,
    cuts: Vec<String>,
    breaches: Vec<Said>,
    remarks: Vec<Said>,
}

/// Says what a check finds in the form as it stands; nothing is saved.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/list/check")]
pub async fn check_form(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let actor = visit.actor()?;
    let typed = list_form::read(&fields, fields.text("faction"));
    let names = list_form::names(&typed);
    let found = app::lists::find_list_desk(&desk, actor, club, season, week).await?;
    let checked = app::lists::check_list(&desk, actor, club, season, week, typed.clone()).await?;
    let list = ArmyList::try_from(typed).ok();
    let parts = list
        .as_ref()
        .map(|list| list_form::parts(&found.catalogue, list))
        .unwrap_or_default();
    let cap = found.week.cap.get();
    let mut panel = CheckPanel::new(&checked.report, cap, &names, parts, visit.t);
    if let Some(list) = list {
        let cuts = checked.cuts.iter();
        panel.cuts = cuts
            .filter_map(|cut| words(&list, cut, visit.t))
            .take(MOST_CUTS)
            .collect();
    }
    fragment(&panel)
}

/// Ways out that are named; the first take the least away.
const MOST_CUTS: usize = 3;

fn words(list: &ArmyList, cut: &Cut, t: &Texts) -> Option<String> {
    let mut entries = list.entries().iter();
    let entry = entries.find(|entry| entry.key == cut.entry)?;
    let unit = faction_name(entry.unit.as_str());
    let step = match &cut.step {
        CutStep::ShrinkTo(models) => t.desk.cut_shrink.with_two(unit, models),
        CutStep::Drop(option) => t
            .desk
            .cut_drop
            .with_two(unit, faction_name(option.as_str())),
        CutStep::LeaveOut => t.desk.cut_leave_out.with(unit),
    };
    Some(format!("{step} (−{})", cut.saves.get()))
}

impl CheckPanel {
    /// What a report says of a list whose entries have these names and cost so much.
    pub fn new(
        report: &Report,
        cap: u32,
        names: &EntryNames,
        parts: Vec<(String, u32)>,
        t: &'static Texts,
    ) -> Self {
        let total = report.total.get();
        let named = |key: &EntryKey| names.get(key.as_str()).cloned();
        let sentences = |severity: Severity| {
            let found = report.findings.iter();
            let found = found.filter(move |finding| finding.severity == severity);
            found
                .map(|finding| Said::finding(t.speech(), finding, &named))
                .collect()
        };
        Self {
            t,
            cap,
            total,
            left: report.left.get(),
            over: total.checked_sub(cap).filter(|over| *over > 0),
            share: (u64::from(total) * 100 / u64::from(cap.max(1))).min(100) as u32,
            parts,
            cuts: Vec::new(),
            breaches: sentences(Severity::Breach),
            remarks: sentences(Severity::Remark),
        }
    }
}
