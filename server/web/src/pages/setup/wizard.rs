//! Page: the set-up wizard of a season, which shows every week before anything is saved.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::seasons::first_day_fault;
use app::{App, Fault, Refusal};
use askama::Template;
use chrono::{Datelike, Days};
use chrono_tz::Tz;
use league::ids::ClubId;
use league::name::Name;
use league::season::WeekPlan;
use messages::{refusals, seasons};

use super::form::{NIGHTS_PER_WEEK, SetupForm};
use super::steps::{self, MethodChoice, STEPS};
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
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
struct WizardPage<'f> {
    layout: Layout,
    t: Texts,
    club_name: String,
    club_link: String,
    step: u8,
    title: Cow<'static, str>,
    form: SetupForm<'f>,
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
page_template!(WizardPage<'_>);

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
    let step = fields.parse("step").unwrap_or(1_u8).clamp(1, STEPS);
    let club = path.id();
    match fields.text("go") {
        "back" => {
            let before = step.saturating_sub(1).max(1);
            setup_page(&app, &request, club, before, &fields, FormErrors::default()).await
        }
        "create" => create(&app, &request, club, &fields).await,
        _ => {
            let faults = faults_of(
                step,
                &SetupForm::new(&fields, app.now().await?.date_naive()),
            );
            let errors = match faults.is_empty() {
                true => FormErrors::default(),
                false => FormErrors::from_faults(faults),
            };
            let next = if errors.is_empty() { step + 1 } else { step };
            setup_page(&app, &request, club, next.min(STEPS), &fields, errors).await
        }
    }
}

async fn create(app: &App, request: &PageRequest, club: ClubId, fields: &FormData) -> PageResult {
    let form = SetupForm::new(fields, app.now().await?.date_naive());
    let errors = match form.command() {
        Err(faults) => FormErrors::from_faults(faults),
        Ok(command) => {
            match app::seasons::create_season(app, request.actor()?, club, command).await {
                Ok(season) => return Ok(see_other(&urls::season(season.key()))),
                Err(refusal) => FormErrors::from_refusal(refusal)?,
            }
        }
    };
    setup_page(app, request, club, STEPS, fields, errors).await
}

/// What is wrong with the fields of one step.
fn faults_of(step: u8, form: &SetupForm<'_>) -> Vec<Fault> {
    match step {
        1 => {
            let name = Name::new(&form.get("name")).err();
            let name = name
                .map(|fault| Fault::new("name", "/name", refusals::name_fault(fault.message())));
            let unknown = form
                .zone()
                .is_none()
                .then(|| Fault::new("zone", "/zone", seasons::zone_unknown_in_form()));
            name.into_iter().chain(unknown).collect()
        }
        2 | 3 => {
            let faults = form.plan().err().unwrap_or_default();
            let of_step = faults
                .into_iter()
                .filter(|fault| step == 3 || fault.pointer.starts_with("/caps"));
            let first = first_day_fault(form.first_day(), form.today(), "/calendar/first_day");
            of_step.map(Fault::from).chain(first).collect()
        }
        4 => match form.policy() {
            Err(faults) => faults,
            Ok(policy) => {
                let mut faults = policy.to_policy().err().unwrap_or_default();
                faults.extend(policy.faults_beyond(form.frame()));
                faults.into_iter().map(Fault::from).collect()
            }
        },
        _ => Vec::new(),
    }
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
    let form = SetupForm::new(fields, app.now().await?.date_naive());
    let t = request.t;
    let page = WizardPage {
        layout: request.layout(),
        t: request.t,
        club_name: club.name,
        club_link: urls::club(id),
        step,
        title: steps::title(t, step),
        carried: steps::carried(step, &form, fields),
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
fn days(t: Texts, form: &SetupForm<'_>) -> Vec<(u16, String)> {
    let first = form.first_day();
    let name = |offset: u16| {
        let day = first
            .checked_add_days(Days::new(offset.into()))
            .unwrap_or(first);
        let later = if offset >= 7 { " +7" } else { "" };
        (offset, format!("{}{later}", t.weekday(day.weekday())))
    };
    (0..14).map(name).collect()
}

fn weeks(t: Texts, form: &SetupForm<'_>) -> Vec<PlannedWeek> {
    let zone = form.zone().unwrap_or(Tz::UTC);
    let planned = form.plan().unwrap_or_default();
    planned
        .iter()
        .map(|week| planned_week(TimeFormatter { t, zone }, week))
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

fn rules(t: Texts, form: &SetupForm<'_>) -> Vec<String> {
    let policy = form
        .policy()
        .ok()
        .and_then(|policy| policy.to_policy().ok());
    policy
        .map(|policy| t.say_all(&policy.messages()))
        .unwrap_or_default()
}
