//! Joining a club by the link of an invitation.

use actix_web::web::Data;
use actix_web::{get, post};
use app::Desk;
use askama::Template;
use serde::Deserialize;

use super::address;
use super::answer::{PageAnswer, framed, go, show_as};
use super::fields::Fields;
use super::texts::Texts;
use super::told::Told;
use super::visit::{Frame, Visit};
use crate::problem::Problem;
use crate::query::Query;

#[derive(Template)]
#[template(path = "invitation.html")]
struct InvitationPage {
    frame: Frame,
    t: &'static Texts,
    code: String,
    told: Told,
}
framed!(InvitationPage);

/// The code that a link carries.
#[derive(Deserialize)]
pub struct ByCode {
    #[serde(default)]
    code: String,
}

/// Asks whoever follows the link; whoever is not signed in does that first.
#[get("/invitations")]
pub async fn show_invitation(visit: Visit, query: Query<ByCode>) -> PageAnswer {
    visit.actor()?;
    invitation(&visit, query.0.code, Told::default())
}

/// Joins the club.
#[post("/invitations")]
pub async fn use_invitation(desk: Data<Desk>, visit: Visit, fields: Fields) -> PageAnswer {
    let actor = visit.actor()?;
    let code = fields.text("code");
    match app::clubs::accept_invitation(&desk, actor, code).await {
        Ok((club, _)) => Ok(go(&address::club(club.id))),
        Err(app::Refusal::NotFound) => {
            let told = Told::of(
                &Problem::from(app::Refusal::NotFound).detail(visit.t.desk.code_unknown.0),
            );
            invitation(&visit, code.to_owned(), told)
        }
        Err(refusal) => invitation(&visit, code.to_owned(), Told::or_problem(refusal)?),
    }
}

fn invitation(visit: &Visit, code: String, told: Told) -> PageAnswer {
    let page = InvitationPage {
        frame: visit.frame(),
        t: visit.t,
        code,
        told,
    };
    show_as(page.told.status(), &page)
}
