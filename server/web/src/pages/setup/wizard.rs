//! Page: the set-up wizard of a season, which shows every week before anything is saved.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::seasons::Season;
use app::{App, Refusal};
use askama::Template;
use chrono::{Datelike, Days};
use chrono_tz::Tz;
use league::ids::ClubId;
use league::season::WeekPlan;

use super::form::{DAYS, NIGHTS_PER_WEEK, SetupForm};
use super::steps::{self, MethodChoice, STEPS};
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::form_reader::broken_form;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, render_page_with_status, see_other,
};
use crate::pages::frame::urls;
use crate::pages::words::local_time::TimeFormatter;
use crate::paths::ClubPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "setup_wizard.html")]
struct WizardPage {
    layout: Layout,
    t: Texts,
    club_name: String,
    club_link: String,
    step: u8,
    title: Cow<'static, str>,
    form: SetupForm,
    carried: Vec<(&'static str, String)>,
    catalogues: Vec<(String, String)>,
    days: Vec<(u16, String)>,
    nights: Vec<(u8, String)>,
    moments: [(&'static str, Cow<'static, str>); 3],
    methods: [MethodChoice; 3],
    values: [(&'static str, Cow<'static, str>); 5],
    limits: [(&'static str, Cow<'static, str>); 3],
    weeks: Vec<PlannedWeek>,
    rules: Vec<String>,
    errors: FormErrors,
}
page_template!(WizardPage);

struct PlannedWeek {
    number: u8,
    cap: u32,
    announce: String,
    due: String,
    nights: String,
    until: String,
}

#[get("/clubs/{club}/seasons/new")]
pub async fn show_setup(app: Data<App>, request: PageRequest, path: Path<ClubPath>) -> PageResult {
    setup_page(
        &app,
        &request,
        path.id(),
        1,
        &FormData::default(),
        FormErrors::default(),
    )
    .await
}

/// To the next step, back to the one before, or done.
#[post("/clubs/{club}/seasons/new")]
pub async fn next_step(
    app: Data<App>,
    request: PageRequest,
    path: Path<ClubPath>,
    fields: FormData,
) -> PageResult {
    let step = match fields.text("step").parse() {
        Ok(step @ 1..=STEPS) => step,
        _ => return Err(broken_form().into()),
    };
    let club = path.id();
    let (next, done) = match fields.text("go") {
        "back" => (step.saturating_sub(1).max(1), Ok(())),
        "next" => {
            let form = SetupForm::new(&fields, app.now().await?.date_naive(), request.t);
            ((step + 1).min(STEPS), form.check(step))
        }
        "create" => match create(&app, &request, club, &fields).await {
            Ok(season) => return Ok(see_other(&urls::season(season.key()))),
            Err(refusal) => (STEPS, Err(refusal)),
        },
        _ => return Err(broken_form().into()),
    };
    let (step, errors) = match done {
        Ok(()) => (next, FormErrors::default()),
        Err(refusal) => (step, FormErrors::from_refusal(refusal)?),
    };
    setup_page(&app, &request, club, step, &fields, errors).await
}

async fn create(
    app: &App,
    request: &PageRequest,
    club: ClubId,
    fields: &FormData,
) -> Result<Season, Refusal> {
    let actor = request.viewer.ok_or(Refusal::SignInNeeded)?;
    let form = SetupForm::new(fields, app.now().await?.date_naive(), request.t);
    app::seasons::create_season(app, actor, club, form.command()?).await
}

async fn setup_page(
    app: &App,
    request: &PageRequest,
    id: ClubId,
    step: u8,
    fields: &FormData,
    errors: FormErrors,
) -> PageResult {
    let (club, role) = app::clubs::find_club(app, request.viewer, id).await?;
    if !crate::pages::words::roles::can_run_seasons(role) {
        return Err(request.actor().map(|_| Refusal::NotFound)?.into());
    }
    let all = app::catalogues::list_catalogues(app, request.actor()?, id).await?;
    let usable = all.into_iter().filter(|catalogue| catalogue.newest > 0);
    let form = SetupForm::new(fields, app.now().await?.date_naive(), request.t);
    let t = request.t;
    let page = WizardPage {
        layout: request.layout(),
        t: request.t,
        club_name: club.name,
        club_link: urls::club(id),
        step,
        title: steps::title(t, step),
        carried: steps::carried(step, fields),
        catalogues: usable
            .map(|catalogue| (catalogue.id.to_string(), catalogue.name))
            .collect(),
        days: days(request.t, &form),
        nights: (1..=NIGHTS_PER_WEEK)
            .map(|number| (number, format!("night_{number}")))
            .collect(),
        moments: steps::moments(t),
        methods: steps::methods(t),
        values: steps::values(t),
        limits: steps::limits(t),
        weeks: if step == STEPS {
            weeks(request.t, &form)
        } else {
            Vec::new()
        },
        rules: if step == STEPS {
            rules(request.t, &form)
        } else {
            Vec::new()
        },
        form,
        errors,
    };
    render_page_with_status(page.errors.status(), &page)
}

/// The days of two weeks from the first day on, by their names.
fn days(t: Texts, form: &SetupForm) -> Vec<(u16, String)> {
    let first = form.first_day();
    let name = |offset: u16| {
        // Only at the end of the calendar is there no such day.
        let day = first
            .checked_add_days(Days::new(offset.into()))
            .unwrap_or(first);
        let later = if offset >= 7 { " +7" } else { "" };
        (offset, format!("{}{later}", t.weekday(day.weekday())))
    };
    (0..DAYS).map(name).collect()
}

fn weeks(t: Texts, form: &SetupForm) -> Vec<PlannedWeek> {
    // Another step asks for a zone that there is.
    let zone = form.zone().unwrap_or(Tz::UTC);
    let planned = form.plan().into_iter().flatten();
    planned
        .map(|week| planned_week(TimeFormatter { t, zone }, &week))
        .collect()
}

fn planned_week(times: TimeFormatter, week: &WeekPlan) -> PlannedWeek {
    let nights = week
        .nights
        .iter()
        .map(|night| times.civil(night.begins.0.0));
    PlannedWeek {
        number: week.week.number(),
        cap: week.cap.get(),
        announce: times.civil(week.announce.0.0),
        due: times.civil(week.lists_due.0.0),
        nights: nights.collect::<Vec<_>>().join("; "),
        until: times.civil(week.play_until.0.0),
    }
}

fn rules(t: Texts, form: &SetupForm) -> Vec<String> {
    // Of rules with faults the step before has told.
    let policy = form
        .policy()
        .ok()
        .and_then(|policy| policy.to_policy().ok());
    policy.map_or_else(Vec::new, |policy| t.say_all(&policy.messages()))
}
