//! Page: the painting log: claims of players, and their verification.

use std::borrow::Cow;
use std::collections::BTreeMap;

use actix_web::web::{Bytes, Data, Path};
use actix_web::{get, post};
use app::painting::{ClaimPainting, PaintingClaim};
use app::{App, Refusal};
use askama::Template;
use document::painting::rules::ModelStagesDocument;
use league::catalogue::MAX_MODELS;
use league::ids::ClaimId;
use league::keys::SeasonKey;
use league::painting::{ClaimState, Evidence, PhotoDigest};
use league::season::{SeasonState, WeekPhase};
use league::week::WeekNo;

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::form_reader::{FormReader, broken_form};
use crate::pages::frame::multipart_form::MultipartForm;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SeasonPage;
use crate::pages::words::factions::faction_name;
use crate::pages::words::roles::can_judge;
use crate::paths::{SeasonPath, photo_digest};
use crate::problem::Problem;
use messages::Texts;

#[derive(Template)]
#[template(path = "painting.html")]
struct PaintingPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: Option<u8>,
    units: Vec<UnitFields>,
    to_check: usize,
    weeks: Vec<ClaimsOfWeek>,
    errors: FormErrors,
}
page_template!(PaintingPage);

/// One unit of the player's list, with how far it was last said to be.
struct UnitFields {
    key: String,
    name: String,
    models: u32,
    finished: u32,
    /// Whether its form was sent and comes back.
    is_typed: bool,
    stages: Vec<StageField>,
}

struct StageField {
    name: &'static str,
    label: Cow<'static, str>,
    value: String,
}

/// The field of each stage, from no paint to all of it.
const STAGES: [&str; 4] = ["bare", "primed", "coloured", "finished"];

/// The claims of one week, the newest first; those that wait for the reader stand open.
struct ClaimsOfWeek {
    week: u8,
    shown: bool,
    claims: Vec<ClaimRow>,
}

struct ClaimRow {
    id: String,
    week: u8,
    player: String,
    unit: String,
    stages: String,
    state: Cow<'static, str>,
    reason: String,
    may_check: bool,
    /// Name of the photo, for those who may see it.
    photo: Option<String>,
    may_delete: bool,
}

#[get("/clubs/{club}/seasons/{season}/painting")]
pub async fn show_painting(page: SeasonPage) -> PageResult {
    painting_page(&page, &FormData::default(), FormErrors::default()).await
}

/// Claims, checks or refuses.
#[post("/clubs/{club}/seasons/{season}/painting")]
pub async fn change_painting(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    MultipartForm { fields, file }: MultipartForm,
) -> PageResult {
    let season = path.key();
    let done = submit(&app, &request, season, &fields, file).await;
    let next = |()| format!("{}/painting", urls::season(season));
    redirect_or_show_errors(done, next, async |errors| {
        let page = SeasonPage::load(app, request, season).await?;
        painting_page(&page, &fields, errors).await
    })
    .await
}

async fn submit(
    app: &App,
    request: &PageRequest,
    season: SeasonKey,
    fields: &FormData,
    file: Option<Bytes>,
) -> Result<(), Refusal> {
    let actor = request.viewer.ok_or(Refusal::SignInNeeded)?;
    let t = request.t;
    let mut form = FormReader::new(fields);
    match fields.text("act") {
        "verify" => {
            let claim = ClaimId(form.id("claim", &t.check_claim()));
            let claim = form.finish(claim)?;
            app::painting::verify_claim(app, actor, season, claim).await?;
        }
        "refuse" => {
            let claim = ClaimId(form.id("claim", &t.check_claim()));
            let (claim, reason) = (form.finish(claim)?, fields.text("reason"));
            app::painting::refuse_claim(app, actor, season, claim, reason).await?;
        }
        "delete-photo" => {
            let photo = photo_digest(fields.text("photo")).ok_or(Refusal::NotFound)?;
            app::painting::delete_photo(app, actor, season, photo).await?;
        }
        "claim" => {
            let (week, claim) = parse_claim(fields, t)?;
            let photo = match file {
                Some(file) => Some(app::painting::create_photo(app, actor, season, file).await?),
                None => None,
            };
            let command = ClaimPainting { photo, ..claim };
            app::painting::claim_painting(app, actor, season.week(week), command).await?;
        }
        _ => return Err(broken_form()),
    }
    Ok(())
}

/// The claim, as yet without its photo, and the week that it is made in.
fn parse_claim(fields: &FormData, t: Texts) -> Result<(WeekNo, ClaimPainting), Refusal> {
    let mut form = FormReader::new(fields);
    let week = form.week("week", &t.week());
    let mut models = |stage, label: &str| {
        let models = form.optional_number(stage, label, 0..=MAX_MODELS);
        // An empty field holds no models, as in the API.
        models.unwrap_or(0)
    };
    let claim = ClaimPainting {
        unit: fields.text("unit").to_owned(),
        photo: None,
        stages: ModelStagesDocument {
            bare: models("bare", &t.stage_bare()),
            primed: models("primed", &t.stage_primed()),
            coloured: models("coloured", &t.stage_coloured()),
            finished: models("finished", &t.stage_finished()),
        },
    };
    form.finish((week, claim))
}

async fn painting_page(page: &SeasonPage, typed: &FormData, errors: FormErrors) -> PageResult {
    let SeasonPage { app, context, .. } = page;
    let (season, viewer) = (page.key(), page.viewer());
    let claims = app::painting::list_claims(app, viewer, season, None).await?;
    let photos = app::painting::list_photos(app, viewer, season).await?;
    let week = week_to_claim(context);
    let units = match week {
        Some(week) => own_units(page, week, &claims, typed).await?,
        None => Vec::new(),
    };
    let rows: Vec<ClaimRow> = claims
        .iter()
        .rev()
        .map(|claim| claim_row(page, claim, &photos))
        .collect();
    let log = PaintingPage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Painting),
        week: week.map(|week| week.number()),
        units,
        to_check: rows.iter().filter(|row| row.may_check).count(),
        weeks: by_week(rows),
        errors,
    };
    render_page_with_status(log.errors.status(), &log)
}

/// The newest week first; it and every week with something to check are shown at once.
fn by_week(rows: Vec<ClaimRow>) -> Vec<ClaimsOfWeek> {
    let mut weeks: BTreeMap<u8, Vec<ClaimRow>> = BTreeMap::new();
    for row in rows {
        weeks.entry(row.week).or_default().push(row);
    }
    let newest = weeks.keys().next_back().copied();
    let of_week = |(week, claims): (u8, Vec<ClaimRow>)| ClaimsOfWeek {
        week,
        shown: newest == Some(week) || claims.iter().any(|claim| claim.may_check),
        claims,
    };
    weeks.into_iter().rev().map(of_week).collect()
}

/// The week whose lists are on the tables, so that the opponent there can look; else the one whose
/// lists come in.
fn week_to_claim(context: &SeasonContext) -> Option<WeekNo> {
    let current = context.current_weeks();
    let played = |phase: WeekPhase| matches!(phase, WeekPhase::ListsOpened | WeekPhase::Paired);
    let open = current
        .iter()
        .find(|(_, phase)| played(*phase))
        .or_else(|| {
            let mut announced = current.iter().rev();
            announced.find(|(_, phase)| *phase >= WeekPhase::Announced)
        });
    open.map(|(week, _)| week.week)
}

async fn own_units(
    page: &SeasonPage,
    week: WeekNo,
    claims: &[PaintingClaim],
    typed: &FormData,
) -> Result<Vec<UnitFields>, Problem> {
    let SeasonPage { app, context, .. } = page;
    let (Some(actor), Some(own)) = (page.viewer(), &context.own) else {
        return Ok(Vec::new());
    };
    if !own.plays_in(week) || context.season.state != SeasonState::Started {
        return Ok(Vec::new());
    }
    let (key, t) = (page.key().week(week), page.t());
    let found = app::lists::find_list_editor(app, actor, key).await?;
    let unit = |entry: &league::lists::Entry| {
        let last = claims
            .iter()
            .rfind(|claim| claim.made.player == own.id && claim.made.unit == entry.key);
        let stages = match last {
            Some(claim) => claim.made.stages.models(),
            None => [entry.models, 0, 0, 0],
        };
        let is_typed = typed.text("unit") == entry.key.as_str();
        let fields = STAGES.into_iter().zip(stage_labels(t)).zip(stages);
        UnitFields {
            key: entry.key.to_string(),
            name: faction_name(entry.key.as_str()),
            models: entry.models,
            finished: stages[3],
            is_typed,
            stages: fields
                .map(|((name, label), models)| StageField {
                    name,
                    label,
                    value: match typed.raw(name).filter(|_| is_typed) {
                        Some(typed) => typed.to_owned(),
                        None => models.to_string(),
                    },
                })
                .collect(),
        }
    };
    Ok(found.list.entries().iter().map(unit).collect())
}

fn stage_labels(t: Texts) -> [Cow<'static, str>; 4] {
    [
        t.stage_bare(),
        t.stage_primed(),
        t.stage_coloured(),
        t.stage_finished(),
    ]
}

fn claim_row(page: &SeasonPage, claim: &PaintingClaim, photos: &[PhotoDigest]) -> ClaimRow {
    let (context, t) = (&page.context, page.t());
    let (state, reason) = match &claim.state {
        ClaimState::Open => (t.claim_open(), String::new()),
        ClaimState::Verified { .. } => (t.claim_verified(), String::new()),
        ClaimState::Refused { reason, .. } => (t.claim_refused(), reason.as_str().to_owned()),
    };
    let texts: [fn(Texts, u32) -> String; 4] = [
        Texts::models_bare,
        Texts::models_primed,
        Texts::models_coloured,
        Texts::models_finished,
    ];
    let stages = claim.made.stages.models().into_iter().zip(texts);
    let stages = stages.filter(|(models, _)| *models > 0);
    let own = context
        .own
        .as_ref()
        .is_some_and(|own| own.id == claim.made.player);
    let photo = match claim.made.evidence {
        Evidence::Photo(digest) if photos.contains(&digest) => Some(hex::encode(digest.0)),
        Evidence::Photo(_) | Evidence::AtTable => None,
    };
    ClaimRow {
        id: claim.made.id.to_string(),
        week: claim.made.week.number(),
        player: context.handle(claim.made.player).to_owned(),
        unit: faction_name(claim.made.unit.as_str()),
        stages: stages
            .map(|(models, text)| text(t, models))
            .collect::<Vec<_>>()
            .join(", "),
        may_check: page.viewer().is_some()
            && context.role.is_some()
            && !own
            && matches!(claim.state, ClaimState::Open),
        photo,
        may_delete: own || can_judge(context.role),
        state,
        reason,
    }
}
