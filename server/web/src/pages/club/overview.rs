//! Page: a club. Its seasons are for everybody, its people for its members.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get, post};
use app::clubs::{
    Club, CreateInvitation, CreatedInvitation, Invitation, MAX_DAYS, MAX_USES, Member,
};
use app::seasons::Season;
use app::{App, Refusal};
use askama::Template;
use league::club_role::ClubRole;
use league::ids::{AccountId, ClubId};
use league::season::SeasonState;
use uuid::Uuid;

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::form_reader::FormReader;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, percent_encode, render_page_with_status, see_other,
};
use crate::pages::frame::urls;
use crate::pages::words::local_time::{LocalTime, TimeFormatter};
use crate::pages::words::roles::{can_run_seasons, role_label};
use crate::paths::ClubPath;
use crate::public_url::PublicUrl;
use messages::Texts;

#[derive(Template)]
#[template(path = "club.html")]
struct ClubPage {
    layout: Layout,
    t: Texts,
    name: String,
    link: String,
    seasons: Vec<SeasonLine>,
    people: Vec<PersonLine>,
    member: bool,
    can_run_seasons: bool,
    owns: bool,
    roles: Vec<(&'static str, Cow<'static, str>)>,
    invitation: Option<NewInvitation>,
    uses: String,
    days: String,
    invitations: Vec<InvitationLine>,
    errors: FormErrors,
}
page_template!(ClubPage);

/// People and days that an invitation is for unless told otherwise.
const INVITATION_USES: &str = "20";
const INVITATION_DAYS: &str = "30";

/// An invitation that was just made.
struct NewInvitation {
    code: String,
    link: String,
    until: LocalTime,
}

/// An invitation that still works.
struct InvitationLine {
    id: String,
    role: Cow<'static, str>,
    uses_left: u16,
    until: LocalTime,
}

struct SeasonLine {
    link: String,
    name: String,
    state: Cow<'static, str>,
    running: bool,
    for_club: bool,
}

struct PersonLine {
    id: String,
    name: String,
    role: Cow<'static, str>,
    role_key: &'static str,
}

#[get("/clubs/{club}")]
pub async fn show_club(app: Data<App>, request: PageRequest, path: Path<ClubPath>) -> PageResult {
    let nothing = FormData::default();
    club_page(
        &app,
        &request,
        path.id(),
        &nothing,
        None,
        FormErrors::default(),
    )
    .await
}

/// Makes an invitation and shows its code, once; or takes one back.
#[post("/clubs/{club}/invitations")]
pub async fn invite(
    app: Data<App>,
    request: PageRequest,
    path: Path<ClubPath>,
    fields: FormData,
    http_request: HttpRequest,
) -> PageResult {
    let (actor, club) = (request.actor()?, path.id());
    let made = match parse_invitation(&fields, request.t) {
        Ok(InvitationForm::Withdraw(id)) => {
            app::clubs::delete_invitation(&app, actor, club, id).await?;
            return Ok(see_other(&urls::club(club)));
        }
        Ok(InvitationForm::Create(command)) => {
            app::clubs::create_invitation(&app, actor, club, command).await
        }
        Err(refusal) => Err(refusal),
    };
    let (invitation, errors) = match made {
        Ok(made) => (
            Some(new_invitation(&request, &http_request, made)),
            FormErrors::default(),
        ),
        Err(refusal) => (None, FormErrors::from_refusal(refusal)?),
    };
    club_page(&app, &request, club, &fields, invitation, errors).await
}

enum InvitationForm {
    Withdraw(Uuid),
    Create(CreateInvitation),
}

fn parse_invitation(fields: &FormData, t: Texts) -> Result<InvitationForm, Refusal> {
    let mut form = FormReader::new(fields);
    let parsed = match fields.raw("withdraw") {
        Some(_) => InvitationForm::Withdraw(form.id("withdraw", &t.invites_open())),
        None => InvitationForm::Create(CreateInvitation {
            role: form.choice("role", &t.invite_as(), ROLES),
            uses: form.number("uses", &t.invite_uses(), 1..=MAX_USES),
            days: form.number("days", &t.invite_days(), 1..=MAX_DAYS),
        }),
    };
    form.finish(parsed)
}

/// Each role with the word that a form sends.
const ROLES: [(&str, ClubRole); 4] = {
    let [owner, organiser, referee, player] = ClubRole::ALL;
    [
        (owner.as_str(), owner),
        (organiser.as_str(), organiser),
        (referee.as_str(), referee),
        (player.as_str(), player),
    ]
};

fn new_invitation(
    request: &PageRequest,
    http_request: &HttpRequest,
    made: CreatedInvitation,
) -> NewInvitation {
    let server = PublicUrl::from_request(http_request);
    NewInvitation {
        link: format!("{server}/invitations?code={}", percent_encode(&made.code)),
        until: utc_times(request.t).countdown(made.expires_at),
        code: made.code,
    }
}

/// A club has no time zone of its own: UTC, to which the script adds the local time of the reader.
fn utc_times(t: Texts) -> TimeFormatter {
    TimeFormatter {
        t,
        zone: chrono_tz::UTC,
    }
}

/// Changes a member's role, or removes the member.
#[post("/clubs/{club}/members")]
pub async fn change_member(
    app: Data<App>,
    request: PageRequest,
    path: Path<ClubPath>,
    fields: FormData,
) -> PageResult {
    let (actor, club) = (request.actor()?, path.id());
    let changed = match parse_member(&fields, request.t) {
        Ok((account, Some(role))) => {
            app::clubs::update_member(&app, actor, club, account, role).await
        }
        Ok((account, None)) => app::clubs::delete_member(&app, actor, club, account).await,
        Err(refusal) => Err(refusal),
    };
    redirect_or_show_errors(
        changed,
        |()| urls::club(club),
        async |errors| club_page(&app, &request, club, &fields, None, errors).await,
    )
    .await
}

/// A member and the new role; none where the form removes the member.
fn parse_member(fields: &FormData, t: Texts) -> Result<(AccountId, Option<ClubRole>), Refusal> {
    let mut form = FormReader::new(fields);
    let account = AccountId(form.id("account", &t.people()));
    let role = fields.raw("role");
    let role = role.map(|_| form.choice("role", &t.role_change(), ROLES));
    form.finish((account, role))
}

async fn club_page(
    app: &App,
    request: &PageRequest,
    id: ClubId,
    fields: &FormData,
    invitation: Option<NewInvitation>,
    errors: FormErrors,
) -> PageResult {
    let (club, role) = app::clubs::find_club(app, request.viewer, id).await?;
    let seasons = app::seasons::list_seasons(app, request.viewer, id).await?;
    let people = match (request.viewer, role) {
        (Some(actor), Some(_)) => app::clubs::list_members(app, actor, id).await?,
        _ => Vec::new(),
    };
    let invitations = match request.viewer {
        Some(actor) if can_run_seasons(role) => {
            app::clubs::list_invitations(app, actor, id).await?
        }
        _ => Vec::new(),
    };
    let mut page = render(request, club, role, seasons, people, errors);
    page.invitation = invitation;
    if !page.errors.is_empty() {
        page.uses = fields.raw("uses").unwrap_or(INVITATION_USES).to_owned();
        page.days = fields.raw("days").unwrap_or(INVITATION_DAYS).to_owned();
    }
    page.invitations = invitations
        .into_iter()
        .map(|open| invitation_line(request.t, open))
        .collect();
    render_page_with_status(page.errors.status(), &page)
}

fn render(
    request: &PageRequest,
    club: Club,
    role: Option<ClubRole>,
    seasons: Vec<Season>,
    people: Vec<Member>,
    errors: FormErrors,
) -> ClubPage {
    let t = request.t;
    ClubPage {
        layout: request.layout(),
        t,
        name: club.name,
        link: urls::club(club.id),
        seasons: seasons
            .iter()
            .map(|season| season_line(t, season))
            .collect(),
        people: people
            .into_iter()
            .map(|person| person_line(t, person))
            .collect(),
        member: role.is_some(),
        can_run_seasons: can_run_seasons(role),
        owns: role == Some(ClubRole::Owner),
        roles: ClubRole::ALL
            .into_iter()
            .map(|role| (role.as_str(), role_label(t, role)))
            .collect(),
        invitation: None,
        uses: INVITATION_USES.to_owned(),
        days: INVITATION_DAYS.to_owned(),
        invitations: Vec::new(),
        errors,
    }
}

fn invitation_line(t: Texts, open: Invitation) -> InvitationLine {
    InvitationLine {
        id: open.id.to_string(),
        role: role_label(t, open.role),
        uses_left: open.uses_left,
        until: utc_times(t).countdown(open.expires_at),
    }
}

fn season_line(t: Texts, season: &Season) -> SeasonLine {
    SeasonLine {
        link: urls::season(season.key()),
        name: season.name.clone(),
        state: state_label(t, season.state),
        running: season.state == SeasonState::Started,
        for_club: season.visibility == league::season::Visibility::Club,
    }
}

fn person_line(t: Texts, person: Member) -> PersonLine {
    PersonLine {
        id: person.account.to_string(),
        name: person.name,
        role: role_label(t, person.role),
        role_key: person.role.as_str(),
    }
}

/// Where a season stands.
pub fn state_label(t: Texts, state: SeasonState) -> Cow<'static, str> {
    match state {
        SeasonState::Draft => t.season_draft(),
        SeasonState::Started => t.season_started(),
        SeasonState::Ended => t.season_ended(),
    }
}
