//! A player's list of a week: written in a form, checked, sealed with a receipt.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::lists::{Begun, ListDesk};
use app::{Actor, Desk, Refusal};
use askama::Template;
use document::list::ArmyListDocument;
use document::receipt::SealedList as ReceiptInput;
use league::catalogue::diff::Touched;
use league::ids::{ClubId, SeasonId};
use league::season::Phase;
use league::week::WeekNo;

use super::address::{self, InWeek};
use super::answer::{PageAnswer, framed, show, show_as};
use super::check::CheckPanel;
use super::fields::Fields;
use super::list_form::{self, EntryFields, KindChoice};
use super::moment::Moment;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;
use crate::problem::{Problem, WireFault};

#[derive(Template)]
#[template(path = "list.html")]
struct ListPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    faction: String,
    check_faction: String,
    begun_from_last: bool,
    touched: Vec<Touched>,
    sealed: Option<Moment>,
    open: bool,
    revision: i32,
    entries: Vec<EntryFields>,
    kinds: Vec<KindChoice>,
    check: String,
    told: Told,
}
framed!(ListPage);

#[derive(Template)]
#[template(path = "receipt.html")]
struct ReceiptPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    sealed_at: Moment,
    late_minutes: Option<u32>,
    points: u32,
    digest: String,
    contents: String,
}
framed!(ReceiptPage);

type Place = (ClubId, SeasonId, WeekNo);

/// The form of a list.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/list")]
pub async fn show_list(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    list_page(&desk, &visit, path.ids()?, Told::default()).await
}

/// Adds, removes or saves; hands in when asked to.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/list")]
pub async fn change_list(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let place = path.ids()?;
    let done = act(&desk, visit.actor()?, place, &fields).await;
    go_or_tell(
        done,
        |address| address,
        async |told| list_page(&desk, &visit, place, told.beside_the_check()).await,
    )
    .await
}

/// The receipt of the sealed list.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/list/receipt")]
pub async fn show_receipt(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    let (club, season, number) = path.ids()?;
    let own = app::lists::find_own_list(&desk, visit.actor()?, club, season, number).await?;
    let sealed = own.sealed.ok_or(Refusal::NotFound)?;
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let contents = ReceiptInput {
        list: sealed.list,
        list_id: own.id.to_string(),
        salt: String::from_utf8_lossy(&sealed.salt).into_owned(),
    };
    let canonical = contents
        .canonical()
        .map_err(|cause| Refusal::Broken(cause.to_string()))?;
    let week = scene.week(number)?;
    show(&ReceiptPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Mine),
        week: WeekPanel::new(&scene, week, visit.t),
        sealed_at: scene.clock(visit.t).at(sealed.sealed_at),
        late_minutes: sealed.late_minutes,
        points: sealed.points,
        digest: document::hex(&sealed.digest),
        contents: String::from_utf8_lossy(&canonical).into_owned(),
    })
}

/// Saves the draft whatever else is asked, so that nothing typed is lost; answers where to go.
async fn act(
    desk: &Desk,
    actor: Actor,
    (club, season, week): Place,
    fields: &Fields,
) -> Result<String, Refusal> {
    let before = app::lists::find_list_desk(desk, actor, club, season, week).await?;
    let mut list = list_form::read(fields, before.list.faction().as_str());
    let act = fields.text("act");
    if act == "add" {
        list_form::add(&mut list, fields.text("new"), &before);
    } else if let Some(key) = act.strip_prefix("remove ") {
        list_form::remove(&mut list, key);
    }
    let revision = fields.value("revision").or(Some(0));
    app::lists::save_draft(desk, actor, club, season, week, revision, list.clone()).await?;
    let page = format!("{}/list", address::week(club, season, week));
    if act == "seal" {
        app::lists::seal_list(desk, actor, club, season, week, list).await?;
        return Ok(format!("{page}/receipt"));
    }
    Ok(page)
}

async fn list_page(desk: &Desk, visit: &Visit, place: Place, told: Told) -> PageAnswer {
    let (club, season, number) = place;
    let actor = visit.actor()?;
    let scene = SeasonScene::load(desk, visit, club, season).await?;
    let found = app::lists::find_list_desk(desk, actor, club, season, number).await?;
    let page = view(visit, &scene, &found, told)?;
    show_as(page.told.status(), &page)
}

fn view(
    visit: &Visit,
    scene: &SeasonScene,
    desk: &ListDesk,
    told: Told,
) -> Result<ListPage, Problem> {
    let t = visit.t;
    let week = scene.week(desk.week.week)?;
    let faction = list_form::faction(desk);
    let faction = faction.ok_or_else(|| Problem::wire(WireFault::NotFound))?;
    let sealed = desk.own.as_ref().and_then(|own| own.sealed.as_ref());
    let names = list_form::names(&ArmyListDocument::from(&desk.list));
    let parts = list_form::parts(&desk.catalogue, &desk.list);
    Ok(ListPage {
        frame: visit.frame(),
        t,
        head: scene.head(visit, Tab::Mine),
        week: WeekPanel::new(scene, week, t),
        faction: faction.name().to_string(),
        check_faction: faction.key().to_string(),
        begun_from_last: desk.begun == Begun::FromLast,
        touched: desk
            .version_change
            .as_ref()
            .map_or_else(Vec::new, |change| change.touched.clone()),
        sealed: sealed.map(|sealed| scene.clock(t).at(sealed.sealed_at)),
        open: (Phase::Announced..Phase::Closed).contains(&desk.phase),
        revision: desk.own.as_ref().map_or(0, |own| own.draft_revision),
        entries: list_form::entries(desk, t),
        kinds: list_form::choices(desk, t),
        check: CheckPanel::new(&desk.report, desk.week.cap.get(), &names, parts, t)
            .render()
            .map_err(|fault| Refusal::Broken(fault.to_string()))?,
        told,
    })
}
