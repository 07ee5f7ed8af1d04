//! Setting up a season in steps, with every week shown before anything is saved.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::seasons::far_first_day;
use app::{Desk, Fault, Refusal};
use askama::Template;
use chrono::{Datelike, Days};
use chrono_tz::Tz;
use league::ids::ClubId;
use league::name::Name;
use league::season::WeekPlan;

use super::address::{self, InClub};
use super::answer::{PageAnswer, framed, go, show_as};
use super::fields::Fields;
use super::moment::Clock;
use super::setup_form::{NIGHTS, SetupForm};
use super::setup_steps::{self, PairingMethod, STEPS};
use super::texts::{Phrase, Texts};
use super::told::Told;
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "setup.html")]
struct SetupPage<'f> {
    frame: Frame,
    t: &'static Texts,
    club_name: String,
    club_link: String,
    step: u8,
    title: Phrase,
    form: SetupForm<'f>,
    carried: Vec<(&'static str, String)>,
    catalogues: Vec<(String, String)>,
    days: Vec<(u16, String)>,
    nights: Vec<(u8, String)>,
    moments: [(&'static str, Phrase); 3],
    methods: [PairingMethod; 3],
    values: [(&'static str, Phrase); 5],
    limits: [(&'static str, Phrase); 3],
    weeks: Vec<PlannedWeek>,
    rules: Vec<String>,
    told: Told,
}
framed!(SetupPage<'_>);

struct PlannedWeek {
    number: u8,
    cap: u32,
    announce: String,
    due: String,
    nights: String,
    until: String,
}

/// The first step.
#[get("/clubs/{club}/seasons/new")]
pub async fn show_setup(desk: Data<Desk>, visit: Visit, path: Path<InClub>) -> PageAnswer {
    setup_page(
        &desk,
        &visit,
        path.id(),
        1,
        &Fields::default(),
        Told::default(),
    )
    .await
}

/// To the next step, back to the one before, or done.
#[post("/clubs/{club}/seasons/new")]
pub async fn next_step(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InClub>,
    fields: Fields,
) -> PageAnswer {
    let step = fields.value("step").unwrap_or(1_u8).clamp(1, STEPS);
    let club = path.id();
    match fields.text("go") {
        "back" => {
            let before = step.saturating_sub(1).max(1);
            setup_page(&desk, &visit, club, before, &fields, Told::default()).await
        }
        "create" => create(&desk, &visit, club, &fields).await,
        _ => {
            let faults = faults_of(
                step,
                &SetupForm::new(&fields, desk.now().await?.date_naive()),
            );
            let told = match faults.is_empty() {
                true => Told::default(),
                false => Told::faults(visit.t.form_faults.to_string(), faults),
            };
            let next = if told.is_empty() { step + 1 } else { step };
            setup_page(&desk, &visit, club, next.min(STEPS), &fields, told).await
        }
    }
}

async fn create(desk: &Desk, visit: &Visit, club: ClubId, fields: &Fields) -> PageAnswer {
    let form = SetupForm::new(fields, desk.now().await?.date_naive());
    let told = match form.command() {
        Err(faults) => Told::faults(visit.t.form_faults.to_string(), faults),
        Ok(command) => {
            match app::seasons::create_season(desk, visit.actor()?, club, command).await {
                Ok(season) => return Ok(go(&address::season(club, season.id))),
                Err(refusal) => Told::or_problem(refusal)?,
            }
        }
    };
    setup_page(desk, visit, club, STEPS, fields, told).await
}

/// What is wrong with the fields of one step.
fn faults_of(step: u8, form: &SetupForm<'_>) -> Vec<Fault> {
    match step {
        1 => {
            let name = Name::new(&form.get("name")).err();
            let name = name.map(|fault| Fault::new("name", "/name", format!("The name {fault}.")));
            let unknown = form.zone().is_none().then(|| {
                Fault::new(
                    "zone",
                    "/zone",
                    "This is no time zone of the IANA database.",
                )
            });
            name.into_iter().chain(unknown).collect()
        }
        2 | 3 => {
            let faults = form.plan().err().unwrap_or_default();
            let of_step = faults
                .into_iter()
                .filter(|fault| step == 3 || fault.pointer.starts_with("/caps"));
            let first = far_first_day(form.first_day(), form.today(), "/calendar/first_day");
            of_step.map(Fault::from).chain(first).collect()
        }
        4 => match form.policy() {
            Err(faults) => faults,
            Ok(policy) => {
                let mut faults = policy.read().err().unwrap_or_default();
                faults.extend(policy.beyond(form.frame()));
                faults.into_iter().map(Fault::from).collect()
            }
        },
        _ => Vec::new(),
    }
}

async fn setup_page(
    desk: &Desk,
    visit: &Visit,
    id: ClubId,
    step: u8,
    fields: &Fields,
    told: Told,
) -> PageAnswer {
    let (club, role) = app::clubs::find_club(desk, visit.viewer, id).await?;
    if !super::roles::runs_seasons(role) {
        return Err(visit.actor().map(|_| Refusal::NotFound)?.into());
    }
    let all = app::catalogues::list_catalogues(desk, visit.actor()?, id).await?;
    let usable = all.into_iter().filter(|catalogue| catalogue.newest > 0);
    let form = SetupForm::new(fields, desk.now().await?.date_naive());
    let t = visit.t;
    let page = SetupPage {
        frame: visit.frame(),
        t: visit.t,
        club_name: club.name,
        club_link: address::club(id),
        step,
        title: setup_steps::title(t, step),
        carried: setup_steps::carried(step, &form, fields),
        catalogues: usable
            .map(|catalogue| (catalogue.id.to_string(), catalogue.name))
            .collect(),
        days: days(visit.t, &form),
        nights: (1..=NIGHTS)
            .map(|number| (number, format!("night_{number}")))
            .collect(),
        moments: setup_steps::moments(t),
        methods: setup_steps::methods(t),
        values: setup_steps::values(t),
        limits: setup_steps::limits(t),
        weeks: if step == STEPS {
            weeks(visit.t, &form)
        } else {
            Vec::new()
        },
        rules: if step == STEPS {
            rules(visit.t, &form)
        } else {
            Vec::new()
        },
        form,
        told,
    };
    show_as(page.told.status(), &page)
}

/// The days of two weeks from the first day on, by their names.
fn days(t: &'static Texts, form: &SetupForm<'_>) -> Vec<(u16, String)> {
    let weekdays = t.weekdays.to_string();
    let first = form.first_day();
    let name = |offset: u16| {
        let day = first
            .checked_add_days(Days::new(offset.into()))
            .unwrap_or(first);
        let name = weekdays
            .split(' ')
            .nth(day.weekday().num_days_from_monday() as usize);
        let later = if offset >= 7 { " +7" } else { "" };
        (offset, format!("{}{later}", name.unwrap_or_default()))
    };
    (0..14).map(name).collect()
}

fn weeks(t: &'static Texts, form: &SetupForm<'_>) -> Vec<PlannedWeek> {
    let zone = form.zone().unwrap_or(Tz::UTC);
    let planned = form.plan().unwrap_or_default();
    planned
        .iter()
        .map(|week| planned_week(Clock { t, zone }, week))
        .collect()
}

fn planned_week(clock: Clock, week: &WeekPlan) -> PlannedWeek {
    let nights = week
        .nights
        .iter()
        .map(|night| clock.civil(night.begins.0.0));
    PlannedWeek {
        number: week.week.number(),
        cap: week.cap.get(),
        announce: clock.civil(week.announce.0.0),
        due: clock.civil(week.lists_due.0.0),
        nights: nights.collect::<Vec<_>>().join("; "),
        until: clock.civil(week.play_until.0.0),
    }
}

fn rules(t: &Texts, form: &SetupForm<'_>) -> Vec<String> {
    let policy = form.policy().ok().and_then(|policy| policy.read().ok());
    policy
        .map(|policy| t.speech().rules(&policy))
        .unwrap_or_default()
}
