//! Signing in and out, registering, and the reader's language.

use actix_web::web::Data;
use actix_web::{get, post};
use app::Desk;
use app::accounts::{RegisterAccount, SignIn};
use askama::Template;
use serde::Deserialize;

use super::answer::{PageAnswer, framed, go, go_with, own_address, percent_encode, show_as};
use super::cookie;
use super::fields::Fields;
use super::texts::Texts;
use super::told::Told;
use super::visit::{Frame, Visit};
use crate::query::Query;

/// Days that a browser stays signed in; its session ends then too.
const DAYS: i64 = 30;

#[derive(Template)]
#[template(path = "sign_in.html")]
struct SignInPage {
    frame: Frame,
    t: &'static Texts,
    told: Told,
    registered: bool,
    register: String,
    next: String,
    email: String,
}
framed!(SignInPage);

#[derive(Template)]
#[template(path = "register.html")]
struct RegisterPage {
    frame: Frame,
    t: &'static Texts,
    told: Told,
    name: String,
    email: String,
    minor: bool,
    guardian: bool,
    next: String,
}
framed!(RegisterPage);

/// Where to go once signed in.
#[derive(Deserialize)]
pub struct Arrival {
    #[serde(default)]
    next: String,
    #[serde(default)]
    registered: bool,
}

/// The form to sign in.
#[get("/sign-in")]
pub async fn show_sign_in(visit: Visit, query: Query<Arrival>) -> PageAnswer {
    let Arrival { next, registered } = query.0;
    let page = SignInPage {
        frame: visit.frame(),
        t: visit.t,
        told: Told::default(),
        registered,
        register: register_address(&next),
        next,
        email: String::new(),
    };
    show_as(page.told.status(), &page)
}

/// Signs in.
#[post("/sign-in")]
pub async fn sign_in(desk: Data<Desk>, visit: Visit, fields: Fields) -> PageAnswer {
    let command = SignIn {
        email: fields.text("email").to_owned(),
        password: fields.sent("password").unwrap_or_default().to_owned(),
    };
    match app::accounts::sign_in_to_pages(&desk, command).await {
        Ok(session) => {
            let cookie = cookie::secret(cookie::SESSION, session.secret, Some(DAYS));
            Ok(go_with(own_address(fields.text("next")), cookie))
        }
        Err(refusal) => {
            let page = SignInPage {
                frame: visit.frame(),
                t: visit.t,
                told: Told::or_problem(refusal)?,
                registered: false,
                register: register_address(fields.text("next")),
                next: fields.text("next").to_owned(),
                email: fields.text("email").to_owned(),
            };
            show_as(page.told.status(), &page)
        }
    }
}

/// Where to register on the way to a page.
fn register_address(next: &str) -> String {
    match next {
        "" => "/register".to_owned(),
        next => format!("/register?next={}", percent_encode(next)),
    }
}

/// Signs out; the session ends at once.
#[post("/sign-out")]
pub async fn sign_out(desk: Data<Desk>, visit: Visit, _fields: Fields) -> PageAnswer {
    if let Some(actor) = visit.viewer {
        app::accounts::sign_out(&desk, actor).await?;
    }
    Ok(go_with("/", cookie::removal(cookie::SESSION)))
}

/// The form to register.
#[get("/register")]
pub async fn show_register(visit: Visit, query: Query<Arrival>) -> PageAnswer {
    let next = query.0.next;
    registration(&visit, &Fields::default(), next, Told::default())
}

/// Registers. The answer is the same whether or not the address has an account.
#[post("/register")]
pub async fn register(desk: Data<Desk>, visit: Visit, fields: Fields) -> PageAnswer {
    let command = RegisterAccount {
        email: fields.text("email").to_owned(),
        name: fields.text("name").to_owned(),
        password: fields.sent("password").unwrap_or_default().to_owned(),
        minor: fields.ticked("minor"),
        guardian_consent: fields.ticked("guardian"),
    };
    match app::accounts::register_account(&desk, command).await {
        Ok(()) => Ok(go(&format!(
            "/sign-in?registered=true&next={}",
            percent_encode(fields.text("next"))
        ))),
        Err(refusal) => {
            let next = fields.text("next").to_owned();
            registration(&visit, &fields, next, Told::or_problem(refusal)?)
        }
    }
}

fn registration(visit: &Visit, fields: &Fields, next: String, told: Told) -> PageAnswer {
    let page = RegisterPage {
        frame: visit.frame(),
        t: visit.t,
        name: fields.text("name").to_owned(),
        email: fields.text("email").to_owned(),
        minor: fields.ticked("minor"),
        guardian: fields.ticked("guardian"),
        next,
        told,
    };
    show_as(page.told.status(), &page)
}

/// Keeps the language that the reader chose.
#[post("/language")]
pub async fn choose_language(fields: Fields) -> PageAnswer {
    let code = if fields.text("language") == "de" {
        "de"
    } else {
        "en"
    };
    let back = own_address(fields.text("back"));
    Ok(go_with(back, cookie::language(code)))
}
