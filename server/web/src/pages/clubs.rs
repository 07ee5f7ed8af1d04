//! A club's page: its seasons for everybody, its people for its people.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get, post};
use app::Desk;
use app::clubs::{Club, CreateInvitation, CreatedInvitation, Invitation, Member};
use app::seasons::Season;
use askama::Template;
use league::ids::{AccountId, ClubId};
use league::role::Role;
use league::season::SeasonState;

use super::address::{self, InClub};
use super::answer::{PageAnswer, framed, go, percent_encode, show_as};
use super::fields::Fields;
use super::moment::{Clock, Moment};
use super::roles::{role_word, runs_seasons};
use super::texts::{Phrase, Texts};
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};
use crate::public_address::PublicAddress;

#[derive(Template)]
#[template(path = "club.html")]
struct ClubPage {
    frame: Frame,
    t: &'static Texts,
    name: String,
    link: String,
    seasons: Vec<SeasonLine>,
    people: Vec<PersonLine>,
    member: bool,
    runs_seasons: bool,
    owns: bool,
    roles: Vec<(&'static str, Phrase)>,
    invitation: Option<NewInvitation>,
    invitations: Vec<InvitationLine>,
    told: Told,
}
framed!(ClubPage);

/// An invitation that was just made.
struct NewInvitation {
    code: String,
    link: String,
    until: Moment,
}

/// An invitation that still works.
struct InvitationLine {
    id: String,
    role: Phrase,
    uses_left: u16,
    until: Moment,
}

struct SeasonLine {
    link: String,
    name: String,
    state: Phrase,
    running: bool,
    for_club: bool,
}

struct PersonLine {
    id: String,
    name: String,
    role: Phrase,
    role_key: &'static str,
}

/// A club's page.
#[get("/clubs/{club}")]
pub async fn show_club(desk: Data<Desk>, visit: Visit, path: Path<InClub>) -> PageAnswer {
    club_page(&desk, &visit, path.id(), None, Told::default()).await
}

/// Makes an invitation and shows its code, once; or takes one back.
#[post("/clubs/{club}/invitations")]
pub async fn invite(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InClub>,
    fields: Fields,
    request: HttpRequest,
) -> PageAnswer {
    if let Some(id) = fields.value("withdraw") {
        app::clubs::delete_invitation(&desk, visit.actor()?, path.id(), id).await?;
        return Ok(go(&address::club(path.id())));
    }
    let command = CreateInvitation {
        role: Role::from_word(fields.text("role")).unwrap_or(Role::Player),
        uses: fields.value("uses").unwrap_or_default(),
        days: fields.value("days").unwrap_or_default(),
    };
    let made = app::clubs::create_invitation(&desk, visit.actor()?, path.id(), command).await;
    let (invitation, told) = match made {
        Ok(made) => (
            Some(new_invitation(&visit, &request, made)),
            Told::default(),
        ),
        Err(refusal) => (None, Told::or_problem(refusal)?),
    };
    club_page(&desk, &visit, path.id(), invitation, told).await
}

fn new_invitation(visit: &Visit, request: &HttpRequest, made: CreatedInvitation) -> NewInvitation {
    let server = PublicAddress::of(request);
    NewInvitation {
        link: format!("{server}/invitations?code={}", percent_encode(&made.code)),
        until: utc(visit.t).until(made.expires_at),
        code: made.code,
    }
}

/// A club has no zone of its own; the reader's clock is told beside it where a script runs.
fn utc(t: &'static Texts) -> Clock {
    Clock {
        t,
        zone: chrono_tz::UTC,
    }
}

/// Changes a member's role, or removes the member.
#[post("/clubs/{club}/members")]
pub async fn change_member(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InClub>,
    fields: Fields,
) -> PageAnswer {
    let (actor, club) = (visit.actor()?, path.id());
    let account = AccountId(fields.value("account").unwrap_or_default());
    let changed = match Role::from_word(fields.text("role")) {
        Some(role) => app::clubs::update_member(&desk, actor, club, account, role).await,
        None => app::clubs::delete_member(&desk, actor, club, account).await,
    };
    go_or_tell(
        changed,
        |()| address::club(club),
        async |told| club_page(&desk, &visit, club, None, told).await,
    )
    .await
}

async fn club_page(
    desk: &Desk,
    visit: &Visit,
    id: ClubId,
    invitation: Option<NewInvitation>,
    told: Told,
) -> PageAnswer {
    let (club, role) = app::clubs::find_club(desk, visit.viewer, id).await?;
    let seasons = app::seasons::list_seasons(desk, visit.viewer, id).await?;
    let people = match (visit.viewer, role) {
        (Some(actor), Some(_)) => app::clubs::list_members(desk, actor, id).await?,
        _ => Vec::new(),
    };
    let invitations = match visit.viewer {
        Some(actor) if runs_seasons(role) => app::clubs::list_invitations(desk, actor, id).await?,
        _ => Vec::new(),
    };
    let mut page = view(visit, club, role, seasons, people, told);
    page.invitation = invitation;
    page.invitations = invitations
        .into_iter()
        .map(|open| invitation_line(visit.t, open))
        .collect();
    show_as(page.told.status(), &page)
}

fn view(
    visit: &Visit,
    club: Club,
    role: Option<Role>,
    seasons: Vec<Season>,
    people: Vec<Member>,
    told: Told,
) -> ClubPage {
    let t = visit.t;
    ClubPage {
        frame: visit.frame(),
        t,
        name: club.name,
        link: address::club(club.id),
        seasons: seasons
            .iter()
            .map(|season| season_line(t, season))
            .collect(),
        people: people
            .into_iter()
            .map(|person| person_line(t, person))
            .collect(),
        member: role.is_some(),
        runs_seasons: runs_seasons(role),
        owns: role == Some(Role::Owner),
        roles: Role::ALL
            .into_iter()
            .map(|role| (role.word(), role_word(t, role)))
            .collect(),
        invitation: None,
        invitations: Vec::new(),
        told,
    }
}

fn invitation_line(t: &'static Texts, open: Invitation) -> InvitationLine {
    InvitationLine {
        id: open.id.to_string(),
        role: role_word(t, open.role),
        uses_left: open.uses_left,
        until: utc(t).until(open.expires_at),
    }
}

fn season_line(t: &Texts, season: &Season) -> SeasonLine {
    SeasonLine {
        link: address::season(season.club, season.id),
        name: season.name.clone(),
        state: season_state(t, season.state),
        running: season.state == SeasonState::Started,
        for_club: season.visibility == league::season::Visibility::Club,
    }
}

fn person_line(t: &Texts, person: Member) -> PersonLine {
    PersonLine {
        id: person.account.to_string(),
        name: person.name,
        role: role_word(t, person.role),
        role_key: person.role.word(),
    }
}

/// Where a season stands.
pub fn season_state(t: &Texts, state: SeasonState) -> Phrase {
    match state {
        SeasonState::Draft => t.state_draft,
        SeasonState::Started => t.state_started,
        SeasonState::Ended => t.state_ended,
    }
}
