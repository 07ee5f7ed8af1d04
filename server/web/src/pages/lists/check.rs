//! The result of a list check: part of the list's page, and a fragment while the form is edited.

use actix_web::post;
use actix_web::web::{Data, Path};
use app::App;
use askama::Template;
use league::lists::{ArmyList, CheckReport, Cut, CutStep, Severity};

use super::form;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::page_request::PageRequest;
use crate::pages::frame::response::{PageResult, render_fragment};
use crate::pages::words::factions::faction_name;
use crate::paths::WeekPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "check.html")]
pub struct CheckPanel {
    t: Texts,
    cap: u32,
    total: u32,
    left: u32,
    over: Option<u32>,
    share: u32,
    parts: Vec<(String, u32)>,
    cuts: Vec<String>,
    breaches: Vec<String>,
    remarks: Vec<String>,
}

/// Says what a check finds in the form as it stands; nothing is saved.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/list/check")]
pub async fn check_form(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let actor = request.actor()?;
    let typed = form::parse_list(&fields, fields.text("faction"), request.t)?;
    let found = app::lists::find_list_editor(&app, actor, week).await?;
    let checked = app::lists::check_list(&app, actor, week, typed.clone()).await?;
    let list = ArmyList::try_from(typed).ok();
    let parts = list
        .as_ref()
        .map_or_else(Vec::new, |list| form::parts(&found.catalogue, list));
    let cap = found.week.cap.get();
    let mut panel = CheckPanel::new(&checked.report, cap, parts, request.t);
    if let Some(list) = list {
        let cuts = checked.cuts.iter();
        panel.cuts = cuts
            .filter_map(|cut| cut_text(&list, cut, request.t))
            .take(MAX_CUTS)
            .collect();
    }
    render_fragment(&panel)
}

/// Ways out that are named; the first take the least away.
const MAX_CUTS: usize = 3;

fn cut_text(list: &ArmyList, cut: &Cut, t: Texts) -> Option<String> {
    let mut entries = list.entries().iter();
    let entry = entries.find(|entry| entry.key == cut.entry)?;
    let unit = faction_name(entry.unit.as_str());
    let step = match &cut.step {
        CutStep::ShrinkTo(models) => t.cut_shrink(unit, models),
        CutStep::Drop(option) => t.cut_drop(unit, faction_name(option.as_str())),
        CutStep::LeaveOut => t.cut_leave_out(unit),
    };
    Some(format!("{step} (−{})", cut.saves.get()))
}

impl CheckPanel {
    /// What a report says of a list whose entries cost so much.
    pub fn new(report: &CheckReport, cap: u32, parts: Vec<(String, u32)>, t: Texts) -> Self {
        let total = report.total.get();
        let sentences = |severity: Severity| {
            let found = report.findings.iter();
            let found = found.filter(move |finding| finding.severity == severity);
            found.map(|finding| t.say(finding.message())).collect()
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
