//! Page: the editor of a player's list, checked and sealed there; and the receipt of a sealed list.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::lists::{ListEditor, ListOrigin};
use app::{Actor, App, Refusal};
use askama::Template;
use document::lists::receipt::SealedList as ReceiptInput;
use league::catalogue::diff::TouchedEntry;
use league::keys::WeekKey;
use league::season::WeekPhase;

use super::check::CheckPanel;
use super::form::{self, EntryFields, KindChoice};
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::form_reader::{FormReader, broken_form};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{
    PageResult, page_template, render_page, render_page_with_status,
};
use crate::pages::frame::urls;
use crate::pages::season::context::{SeasonHeader, SeasonTab};
use crate::pages::season::season_page::{SeasonPage, SignedInSeasonPage};
use crate::pages::week::panel::WeekPanel;
use crate::pages::words::local_time::LocalTime;
use crate::paths::WeekPath;
use crate::problem::{HttpFault, Problem};
use messages::Texts;

#[derive(Template)]
#[template(path = "list.html")]
struct ListPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    faction: String,
    check_faction: String,
    begun_from_last: bool,
    touched: Vec<TouchedEntry>,
    sealed: Option<LocalTime>,
    open: bool,
    revision: i32,
    entries: Vec<EntryFields>,
    kinds: Vec<KindChoice>,
    check: String,
    errors: FormErrors,
}
page_template!(ListPage);

#[derive(Template)]
#[template(path = "receipt.html")]
struct ReceiptPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    sealed_at: LocalTime,
    late_minutes: Option<u32>,
    points: u32,
    digest: String,
    contents: String,
}
page_template!(ReceiptPage);

/// The form of a list.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/list")]
pub async fn show_list(page: SignedInSeasonPage, path: Path<WeekPath>) -> PageResult {
    list_page(&page, path.key()?, None, FormErrors::default()).await
}

/// Adds, removes or saves; hands in when asked to.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/list")]
pub async fn change_list(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let done = submit(&app, request.actor()?, week, &fields, request.t).await;
    redirect_or_show_errors(
        done,
        |address| address,
        async |errors| {
            let errors = errors.without_list_findings();
            let page = SignedInSeasonPage::load(app, request, week.season).await?;
            list_page(&page, week, Some(&fields), errors).await
        },
    )
    .await
}

/// The receipt of the sealed list.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/list/receipt")]
pub async fn show_receipt(page: SignedInSeasonPage, path: Path<WeekPath>) -> PageResult {
    let key = path.key()?;
    let (context, t) = (&page.context, page.t());
    let own = app::lists::find_own_list(&page.app, page.actor, key).await?;
    let sealed = own.sealed.ok_or(Refusal::NotFound)?;
    let contents = ReceiptInput {
        list: sealed.list,
        list_id: own.id.to_string(),
        salt: String::from_utf8_lossy(&sealed.salt).into_owned(),
    };
    let canonical = contents
        .canonical()
        .map_err(|cause| Refusal::Internal(cause.to_string()))?;
    let week = context.week(key.week)?;
    render_page(&ReceiptPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Mine),
        week: WeekPanel::new(context, week, t),
        sealed_at: context.times(t).date_time(sealed.sealed_at),
        late_minutes: sealed.late_minutes,
        points: sealed.points,
        digest: hex::encode(sealed.digest),
        contents: String::from_utf8_lossy(&canonical).into_owned(),
    })
}

/// Saves the draft whatever else is asked, so that nothing typed is lost; answers where to go.
async fn submit(
    app: &App,
    actor: Actor,
    key: WeekKey,
    fields: &FormData,
    t: Texts,
) -> Result<String, Refusal> {
    let before = app::lists::find_list_editor(app, actor, key).await?;
    let mut list = form::parse_list(fields, before.list.faction().as_str(), t)?;
    let submit = fields.text("act");
    match submit.split_once(' ').unwrap_or((submit, "")) {
        ("save" | "seal", _) => {}
        ("add", _) => form::add_unit(&mut list, fields.text("new"), &before, t)?,
        ("remove", key) => form::remove_entry(&mut list, key),
        _ => return Err(broken_form()),
    }
    let mut form = FormReader::new(fields);
    let revision = form.hidden("revision");
    let revision = form.finish(revision)?;
    app::lists::save_draft(app, actor, key, revision, list.clone()).await?;
    let page = format!("{}/list", urls::week(key));
    if submit == "seal" {
        app::lists::seal_list(app, actor, key, list).await?;
        return Ok(format!("{page}/receipt"));
    }
    Ok(page)
}

async fn list_page(
    page: &SignedInSeasonPage,
    key: WeekKey,
    typed: Option<&FormData>,
    errors: FormErrors,
) -> PageResult {
    let found = app::lists::find_list_editor(&page.app, page.actor, key).await?;
    let mut list = render(page, &found, errors)?;
    // Nothing was saved where a number could not be read: the fields say again what was typed.
    if let Some(typed) = typed.filter(|it| form::parse_list(it, "", page.t()).is_err()) {
        form::restore_typed(&mut list.entries, typed);
    }
    render_page_with_status(list.errors.status(), &list)
}

fn render(page: &SeasonPage, editor: &ListEditor, errors: FormErrors) -> Result<ListPage, Problem> {
    let (context, t) = (&page.context, page.t());
    let week = context.week(editor.week.week)?;
    let faction = form::faction(editor);
    let faction = faction.ok_or_else(|| Problem::http(HttpFault::NotFound))?;
    let sealed = editor.own.as_ref().and_then(|own| own.sealed.as_ref());
    let parts = form::parts(&editor.catalogue, &editor.list);
    Ok(ListPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Mine),
        week: WeekPanel::new(context, week, t),
        faction: faction.name().to_string(),
        check_faction: faction.key().to_string(),
        begun_from_last: editor.origin == ListOrigin::FromLast,
        touched: editor
            .version_change
            .as_ref()
            .map_or_else(Vec::new, |change| change.touched.clone()),
        sealed: sealed.map(|sealed| context.times(t).date_time(sealed.sealed_at)),
        open: (WeekPhase::Announced..WeekPhase::Closed).contains(&editor.phase),
        revision: editor.own.as_ref().map_or(0, |own| own.draft_revision),
        entries: form::entries(editor, t),
        kinds: form::choices(editor, t),
        check: CheckPanel::new(&editor.report, editor.week.cap.get(), parts, t)
            .render()
            .map_err(|fault| Refusal::Internal(fault.to_string()))?,
        errors,
    })
}
