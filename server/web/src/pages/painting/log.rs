//! Page: the painting log: claims of players, and their verification.

use std::borrow::Cow;
use std::collections::BTreeMap;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::painting::{ClaimPainting, PaintingClaim};
use app::{App, Refusal};
use askama::Template;
use document::painting::rules::ModelStagesDocument;
use league::ids::ClaimId;
use league::keys::SeasonKey;
use league::painting::{ClaimState, Evidence, PhotoDigest};
use league::season::{SeasonState, WeekPhase};

use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::multipart_form::MultipartForm;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
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
    stages: [u32; 4],
}

impl UnitFields {
    /// Whether nothing is left to paint.
    fn is_finished(&self) -> bool {
        self.stages[3] == self.models
    }
}

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
pub async fn show_painting(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
) -> PageResult {
    let season = path.key();
    painting_page(&app, &request, season, FormErrors::default()).await
}

/// Claims, checks or refuses.
#[post("/clubs/{club}/seasons/{season}/painting")]
pub async fn change_painting(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    upload: MultipartForm,
) -> PageResult {
    let season = path.key();
    let done = submit(&app, &request, season, upload).await;
    let next = |()| format!("{}/painting", urls::season(season));
    redirect_or_show_errors(done, next, async |errors| {
        painting_page(&app, &request, season, errors).await
    })
    .await
}

async fn submit(
    app: &App,
    request: &PageRequest,
    season: SeasonKey,
    MultipartForm { fields, file }: MultipartForm,
) -> Result<(), Refusal> {
    let actor = request.viewer.ok_or(Refusal::SignInNeeded)?;
    let claim = ClaimId(fields.parse("claim").unwrap_or_default());
    match fields.text("act") {
        "verify" => {
            app::painting::verify_claim(app, actor, season, claim).await?;
        }
        "refuse" => {
            let reason = fields.text("reason");
            app::painting::refuse_claim(app, actor, season, claim, reason).await?;
        }
        "delete-photo" => {
            let photo = photo_digest(fields.text("photo")).ok_or(Refusal::NotFound)?;
            app::painting::delete_photo(app, actor, season, photo).await?;
        }
        _ => {
            let photo = match file {
                Some(file) => Some(app::painting::create_photo(app, actor, season, file).await?),
                None => None,
            };
            let models = |stage: &str| fields.parse(stage).unwrap_or_default();
            let command = ClaimPainting {
                unit: fields.text("unit").to_owned(),
                photo,
                stages: ModelStagesDocument {
                    bare: models("bare"),
                    primed: models("primed"),
                    coloured: models("coloured"),
                    finished: models("finished"),
                },
            };
            let week = fields.parse("week").and_then(league::week::WeekNo::new);
            let week = week.ok_or(Refusal::NotFound)?;
            app::painting::claim_painting(app, actor, season.week(week), command).await?;
        }
    }
    Ok(())
}

async fn painting_page(
    app: &App,
    request: &PageRequest,
    season: SeasonKey,
    errors: FormErrors,
) -> PageResult {
    let context = SeasonContext::load(app, request, season).await?;
    let claims = app::painting::list_claims(app, request.viewer, season, None).await?;
    let photos = app::painting::list_photos(app, request.viewer, season).await?;
    let week = week_to_claim(&context);
    let units = match week {
        Some(week) => own_units(app, request, &context, week, &claims).await?,
        None => Vec::new(),
    };
    let rows: Vec<ClaimRow> = claims
        .iter()
        .rev()
        .map(|claim| claim_row(&context, request, claim, &photos))
        .collect();
    let page = PaintingPage {
        layout: request.layout(),
        t: request.t,
        header: context.header(request, SeasonTab::Painting),
        week: week.map(|week| week.number()),
        units,
        to_check: rows.iter().filter(|row| row.may_check).count(),
        weeks: by_week(rows),
        errors,
    };
    render_page_with_status(page.errors.status(), &page)
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
fn week_to_claim(context: &SeasonContext) -> Option<league::week::WeekNo> {
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
    app: &App,
    request: &PageRequest,
    context: &SeasonContext,
    week: league::week::WeekNo,
    claims: &[PaintingClaim],
) -> Result<Vec<UnitFields>, Problem> {
    let (Some(actor), Some(own)) = (request.viewer, &context.own) else {
        return Ok(Vec::new());
    };
    if !own.plays_in(week) || context.season.state != SeasonState::Started {
        return Ok(Vec::new());
    }
    let key = context.season.key();
    let found = app::lists::find_list_editor(app, actor, key.week(week)).await?;
    let unit = |entry: &league::lists::Entry| {
        let last = claims
            .iter()
            .rfind(|claim| claim.made.player == own.id && claim.made.unit == entry.key);
        UnitFields {
            key: entry.key.to_string(),
            name: faction_name(entry.key.as_str()),
            models: entry.models,
            stages: match last {
                Some(claim) => claim.made.stages.models(),
                None => [entry.models, 0, 0, 0],
            },
        }
    };
    Ok(found.list.entries().iter().map(unit).collect())
}

fn claim_row(
    context: &SeasonContext,
    request: &PageRequest,
    claim: &PaintingClaim,
    photos: &[PhotoDigest],
) -> ClaimRow {
    let t = request.t;
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
        may_check: request.viewer.is_some()
            && context.role.is_some()
            && !own
            && matches!(claim.state, ClaimState::Open),
        photo,
        may_delete: own || can_judge(context.role),
        state,
        reason,
    }
}
