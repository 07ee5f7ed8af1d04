//! Page: consent to a public record over a club's seasons, given or withdrawn.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::App;
use askama::Template;
use league::ids::ClubId;

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
#[template(path = "record_consent.html")]
struct RecordConsentPage {
    layout: Layout,
    t: Texts,
    link: String,
    club_name: String,
    club_link: String,
    /// May not agree.
    minor: bool,
    open: Option<OpenPanel>,
    errors: FormErrors,
}
page_template!(RecordConsentPage);

/// A record that everybody may read.
struct OpenPanel {
    since: String,
    address: String,
}

/// Says whether everybody may read one's record, and what that means.
#[get("/clubs/{club}/record-consent")]
pub async fn show_record_consent(
    app: Data<App>,
    request: PageRequest,
    path: Path<ClubPath>,
) -> PageResult {
    consent_page(&app, &request, path.id(), FormErrors::default()).await
}

/// Agrees, or takes it back.
#[post("/clubs/{club}/record-consent")]
pub async fn change_record_consent(
    app: Data<App>,
    request: PageRequest,
    path: Path<ClubPath>,
    fields: FormData,
) -> PageResult {
    let (actor, club) = (request.actor()?, path.id());
    let done = match fields.text("record") {
        "open" => app::clubs::create_record_consent(&app, actor, club)
            .await
            .map(|_| ()),
        "closed" => app::clubs::delete_record_consent(&app, actor, club).await,
        _ => Err(broken_form()),
    };
    match done {
        Ok(()) => Ok(see_other(&urls::record_consent(club))),
        Err(refusal) => {
            consent_page(&app, &request, club, FormErrors::from_refusal(refusal)?).await
        }
    }
}

async fn consent_page(
    app: &App,
    request: &PageRequest,
    id: ClubId,
    errors: FormErrors,
) -> PageResult {
    let actor = request.actor()?;
    let open = app::clubs::find_record_consent(app, actor, id).await?;
    let (club, _) = app::clubs::find_club(app, request.viewer, id).await?;
    let account = app::accounts::find_account(app, actor).await?.account;
    let times = TimeFormatter {
        t: request.t,
        zone: chrono_tz::UTC,
    };
    let page = RecordConsentPage {
        layout: request.layout(),
        t: request.t,
        link: urls::record_consent(id),
        club_name: club.name,
        club_link: urls::club(id),
        minor: account.minor,
        open: open.map(|open| OpenPanel {
            since: times.day(open.agreed_at),
            address: format!("/public/clubs/{id}/records/{}", open.record),
        }),
        errors,
    };
    render_page_with_status(page.errors.status(), &page)
}
