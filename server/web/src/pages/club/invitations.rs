//! Page: joining a club by the link of an invitation.

use actix_web::web::Data;
use actix_web::{get, post};
use app::App;
use askama::Template;
use messages::clubs;
use serde::Deserialize;

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, render_page_with_status, see_other,
};
use crate::pages::frame::urls;
use crate::problem::Problem;
use crate::query_parameters::Query;
use messages::Texts;

#[derive(Template)]
#[template(path = "invitation.html")]
struct InvitationPage {
    layout: Layout,
    t: Texts,
    code: String,
    errors: FormErrors,
}
page_template!(InvitationPage);

/// The code that a link carries.
#[derive(Deserialize)]
pub struct CodeQuery {
    #[serde(default)]
    code: String,
}

/// Asks whoever follows the link; whoever is not signed in does that first.
#[get("/invitations")]
pub async fn show_invitation(request: PageRequest, query: Query<CodeQuery>) -> PageResult {
    request.actor()?;
    invitation(&request, query.0.code, FormErrors::default())
}

#[post("/invitations")]
pub async fn use_invitation(app: Data<App>, request: PageRequest, fields: FormData) -> PageResult {
    let actor = request.actor()?;
    let code = fields.text("code");
    match app::clubs::accept_invitation(&app, actor, code).await {
        Ok((club, _)) => Ok(see_other(&urls::club(club.id))),
        Err(app::Refusal::NotFound) => {
            let problem = Problem::from(app::Refusal::NotFound).detail(clubs::invitation_unknown());
            let errors = FormErrors::from_problem(&problem);
            invitation(&request, code.to_owned(), errors)
        }
        Err(refusal) => invitation(
            &request,
            code.to_owned(),
            FormErrors::from_refusal(refusal)?,
        ),
    }
}

fn invitation(request: &PageRequest, code: String, errors: FormErrors) -> PageResult {
    let page = InvitationPage {
        layout: request.layout(),
        t: request.t,
        code,
        errors,
    };
    render_page_with_status(page.errors.status(), &page)
}
