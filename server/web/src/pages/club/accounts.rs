//! Pages: signing in and out, registering, and choosing a language.

use actix_web::web::Data;
use actix_web::{get, post};
use app::App;
use app::accounts::{RegisterAccount, SignIn};
use askama::Template;
use messages::Language;
use serde::Deserialize;

use crate::pages::frame::cookies;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::form_reader::broken_form;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, local_path, page_template, percent_encode, redirect_with_cookie,
    render_page_with_status, see_other,
};
use crate::query_parameters::Query;
use messages::Texts;

/// Days that a browser stays signed in; its session ends then too.
const SESSION_COOKIE_DAYS: i64 = 30;

#[derive(Template)]
#[template(path = "sign_in.html")]
struct SignInPage {
    layout: Layout,
    t: Texts,
    errors: FormErrors,
    registered: bool,
    register: String,
    next: String,
    email: String,
}
page_template!(SignInPage);

#[derive(Template)]
#[template(path = "register.html")]
struct RegisterPage {
    layout: Layout,
    t: Texts,
    errors: FormErrors,
    name: String,
    email: String,
    minor: bool,
    guardian: bool,
    next: String,
}
page_template!(RegisterPage);

/// Where to go once signed in.
#[derive(Deserialize)]
pub struct NextQuery {
    #[serde(default)]
    next: String,
    #[serde(default)]
    registered: bool,
}

/// The form to sign in.
#[get("/sign-in")]
pub async fn show_sign_in(request: PageRequest, query: Query<NextQuery>) -> PageResult {
    let NextQuery { next, registered } = query.0;
    let page = SignInPage {
        layout: request.layout(),
        t: request.t,
        errors: FormErrors::default(),
        registered,
        register: register_address(&next),
        next,
        email: String::new(),
    };
    render_page_with_status(page.errors.status(), &page)
}

#[post("/sign-in")]
pub async fn sign_in(app: Data<App>, request: PageRequest, fields: FormData) -> PageResult {
    let command = SignIn {
        email: fields.text("email").to_owned(),
        password: fields.typed("password").to_owned(),
    };
    match app::accounts::sign_in_to_pages(&app, command).await {
        Ok(session) => {
            let cookie =
                cookies::secret_cookie(cookies::SESSION, session.secret, Some(SESSION_COOKIE_DAYS));
            Ok(redirect_with_cookie(
                local_path(fields.text("next")),
                cookie,
            ))
        }
        Err(refusal) => {
            let page = SignInPage {
                layout: request.layout(),
                t: request.t,
                errors: FormErrors::from_refusal(refusal)?,
                registered: false,
                register: register_address(fields.text("next")),
                next: fields.text("next").to_owned(),
                email: fields.typed("email").to_owned(),
            };
            render_page_with_status(page.errors.status(), &page)
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
pub async fn sign_out(app: Data<App>, request: PageRequest, _fields: FormData) -> PageResult {
    if let Some(actor) = request.viewer {
        app::accounts::sign_out(&app, actor).await?;
    }
    Ok(redirect_with_cookie(
        "/",
        cookies::removal_cookie(cookies::SESSION),
    ))
}

/// The form to register.
#[get("/register")]
pub async fn show_register(request: PageRequest, query: Query<NextQuery>) -> PageResult {
    let next = query.0.next;
    register_page(&request, &FormData::default(), next, FormErrors::default())
}

/// Registers. The answer is the same whether or not the address has an account.
#[post("/register")]
pub async fn register(app: Data<App>, request: PageRequest, fields: FormData) -> PageResult {
    let command = RegisterAccount {
        email: fields.text("email").to_owned(),
        name: fields.text("name").to_owned(),
        password: fields.typed("password").to_owned(),
        minor: fields.is_checked("minor"),
        guardian_consent: fields.is_checked("guardian"),
    };
    match app::accounts::register_account(&app, command).await {
        Ok(()) => Ok(see_other(&format!(
            "/sign-in?registered=true&next={}",
            percent_encode(fields.text("next"))
        ))),
        Err(refusal) => {
            let next = fields.text("next").to_owned();
            register_page(&request, &fields, next, FormErrors::from_refusal(refusal)?)
        }
    }
}

fn register_page(
    request: &PageRequest,
    fields: &FormData,
    next: String,
    errors: FormErrors,
) -> PageResult {
    let page = RegisterPage {
        layout: request.layout(),
        t: request.t,
        name: fields.typed("name").to_owned(),
        email: fields.typed("email").to_owned(),
        minor: fields.is_checked("minor"),
        guardian: fields.is_checked("guardian"),
        next,
        errors,
    };
    render_page_with_status(page.errors.status(), &page)
}

/// Keeps the language that the reader chose.
#[post("/language")]
pub async fn choose_language(fields: FormData) -> PageResult {
    let chosen = Language::of_tag(fields.text("language")).ok_or_else(broken_form)?;
    let back = local_path(fields.text("back"));
    Ok(redirect_with_cookie(back, cookies::language_cookie(chosen)))
}
