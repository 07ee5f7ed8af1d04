//! Whether everybody may read one's record over a club's seasons: agree, or take it back.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::Desk;
use askama::Template;
use league::ids::ClubId;

use super::address::{self, InClub};
use super::answer::{PageAnswer, framed, go, show_as};
use super::fields::Fields;
use super::moment::Clock;
use super::texts::Texts;
use super::told::Told;
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "record_consent.html")]
struct RecordConsentPage {
    frame: Frame,
    t: &'static Texts,
    link: String,
    club_name: String,
    club_link: String,
    /// May not agree.
    minor: bool,
    open: Option<OpenPanel>,
    told: Told,
}
framed!(RecordConsentPage);

/// A record that everybody may read.
struct OpenPanel {
    since: String,
    address: String,
}

/// Says whether everybody may read one's record, and what that means.
#[get("/clubs/{club}/record-consent")]
pub async fn show_record_consent(desk: Data<Desk>, visit: Visit, path: Path<InClub>) -> PageAnswer {
    consent_page(&desk, &visit, path.id(), Told::default()).await
}

/// Agrees, or takes it back.
#[post("/clubs/{club}/record-consent")]
pub async fn change_record_consent(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InClub>,
    fields: Fields,
) -> PageAnswer {
    let (actor, club) = (visit.actor()?, path.id());
    let done = match fields.text("record") {
        "open" => app::clubs::create_record_consent(&desk, actor, club)
            .await
            .map(|_| ()),
        _ => app::clubs::delete_record_consent(&desk, actor, club).await,
    };
    match done {
        Ok(()) => Ok(go(&address::record_consent(club))),
        Err(refusal) => consent_page(&desk, &visit, club, Told::or_problem(refusal)?).await,
    }
}

async fn consent_page(desk: &Desk, visit: &Visit, id: ClubId, told: Told) -> PageAnswer {
    let actor = visit.actor()?;
    let open = app::clubs::find_record_consent(desk, actor, id).await?;
    let (club, _) = app::clubs::find_club(desk, visit.viewer, id).await?;
    let account = app::accounts::find_account(desk, actor).await?.account;
    let clock = Clock {
        t: visit.t,
        zone: chrono_tz::UTC,
    };
    let page = RecordConsentPage {
        frame: visit.frame(),
        t: visit.t,
        link: address::record_consent(id),
        club_name: club.name,
        club_link: address::club(id),
        minor: account.minor,
        open: open.map(|open| OpenPanel {
            since: clock.day(open.agreed_at),
            address: format!("/public/clubs/{id}/records/{}", open.record),
        }),
        told,
    };
    show_as(page.told.status(), &page)
}
