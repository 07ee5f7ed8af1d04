//! The painting log: what players claim, and who looks at it.

use std::collections::BTreeMap;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::painting::{Claim, ClaimPainting};
use app::{Desk, Refusal};
use askama::Template;
use document::painting::ModelStagesDocument;
use league::ids::{ClaimId, ClubId, SeasonId};
use league::painting::{ClaimState, Evidence, PhotoDigest};
use league::season::{Phase, SeasonState};

use super::address::{self, InSeason};
use super::answer::{PageAnswer, framed, show_as};
use super::factions::faction_name;
use super::photos::digest;
use super::roles::judges;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::told::{Told, go_or_tell};
use super::upload::Upload;
use super::visit::{Frame, Visit};
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "painting.html")]
struct PaintingPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: Option<u8>,
    units: Vec<UnitFields>,
    to_check: usize,
    weeks: Vec<ClaimsOfWeek>,
    told: Told,
}
framed!(PaintingPage);

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
    state: Phrase,
    reason: String,
    may_check: bool,
    /// Name of the photo, for those who may see it.
    photo: Option<String>,
    may_delete: bool,
}

/// The log.
#[get("/clubs/{club}/seasons/{season}/painting")]
pub async fn show_painting(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    painting_page(&desk, &visit, club, season, Told::default()).await
}

/// Claims, checks or refuses.
#[post("/clubs/{club}/seasons/{season}/painting")]
pub async fn change_painting(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    upload: Upload,
) -> PageAnswer {
    let (club, season) = path.ids();
    let done = act(&desk, &visit, club, season, upload).await;
    let next = |()| format!("{}/painting", address::season(club, season));
    go_or_tell(done, next, async |told| {
        painting_page(&desk, &visit, club, season, told).await
    })
    .await
}

async fn act(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    season: SeasonId,
    Upload { fields, file }: Upload,
) -> Result<(), Refusal> {
    let actor = visit.viewer.ok_or(Refusal::SignInNeeded)?;
    let claim = ClaimId(fields.value("claim").unwrap_or_default());
    match fields.text("act") {
        "verify" => {
            app::painting::verify_claim(desk, actor, club, season, claim).await?;
        }
        "refuse" => {
            let reason = fields.text("reason");
            app::painting::refuse_claim(desk, actor, club, season, claim, reason).await?;
        }
        "delete-photo" => {
            let photo = digest(fields.text("photo")).ok_or(Refusal::NotFound)?;
            app::painting::delete_photo(desk, actor, club, season, photo).await?;
        }
        _ => {
            let photo = match file {
                Some(file) => {
                    Some(app::painting::create_photo(desk, actor, club, season, file).await?)
                }
                None => None,
            };
            let models = |stage: &str| fields.value(stage).unwrap_or_default();
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
            let week = fields.value("week").and_then(league::week::WeekNo::new);
            let week = week.ok_or(Refusal::NotFound)?;
            app::painting::claim_painting(desk, actor, club, season, week, command).await?;
        }
    }
    Ok(())
}

async fn painting_page(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    id: SeasonId,
    told: Told,
) -> PageAnswer {
    let scene = SeasonScene::load(desk, visit, club, id).await?;
    let claims = app::painting::list_claims(desk, visit.viewer, club, id, None).await?;
    let photos = app::painting::list_photos(desk, visit.viewer, club, id).await?;
    let week = week_to_claim(&scene);
    let units = match week {
        Some(week) => own_units(desk, visit, &scene, week, &claims).await?,
        None => Vec::new(),
    };
    let rows: Vec<ClaimRow> = claims
        .iter()
        .rev()
        .map(|claim| claim_row(&scene, visit, claim, &photos))
        .collect();
    let page = PaintingPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Painting),
        week: week.map(|week| week.number()),
        units,
        to_check: rows.iter().filter(|row| row.may_check).count(),
        weeks: by_week(rows),
        told,
    };
    show_as(page.told.status(), &page)
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
fn week_to_claim(scene: &SeasonScene) -> Option<league::week::WeekNo> {
    let current = scene.current();
    let played = |phase: Phase| matches!(phase, Phase::ListsOpened | Phase::Paired);
    let open = current
        .iter()
        .find(|(_, phase)| played(*phase))
        .or_else(|| {
            let mut announced = current.iter().rev();
            announced.find(|(_, phase)| *phase >= Phase::Announced)
        });
    open.map(|(week, _)| week.week)
}

async fn own_units(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
    week: league::week::WeekNo,
    claims: &[Claim],
) -> Result<Vec<UnitFields>, Problem> {
    let (Some(actor), Some(own)) = (visit.viewer, &scene.own) else {
        return Ok(Vec::new());
    };
    if !own.plays_in(week) || scene.season.state != SeasonState::Started {
        return Ok(Vec::new());
    }
    let (club, season) = (scene.season.club, scene.season.id);
    let found = app::lists::find_list_desk(desk, actor, club, season, week).await?;
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
    scene: &SeasonScene,
    visit: &Visit,
    claim: &Claim,
    photos: &[PhotoDigest],
) -> ClaimRow {
    let t = visit.t;
    let (state, reason) = match &claim.state {
        ClaimState::Open => (t.claim_open, String::new()),
        ClaimState::Verified { .. } => (t.claim_verified, String::new()),
        ClaimState::Refused { reason, .. } => (t.claim_refused, reason.as_str().to_owned()),
    };
    let names = [
        t.stage_bare,
        t.stage_primed,
        t.stage_coloured,
        t.stage_finished,
    ];
    let stages = claim.made.stages.models().into_iter().zip(names);
    let stages = stages.filter(|(models, _)| *models > 0);
    let own = scene
        .own
        .as_ref()
        .is_some_and(|own| own.id == claim.made.player);
    let photo = match claim.made.evidence {
        Evidence::Photo(digest) if photos.contains(&digest) => Some(document::hex(&digest.0)),
        Evidence::Photo(_) | Evidence::AtTable => None,
    };
    ClaimRow {
        id: claim.made.id.to_string(),
        week: claim.made.week.number(),
        player: scene.handle(claim.made.player).to_owned(),
        unit: faction_name(claim.made.unit.as_str()),
        stages: stages
            .map(|(models, name)| format!("{models} {name}"))
            .collect::<Vec<_>>()
            .join(", "),
        may_check: visit.viewer.is_some()
            && scene.role.is_some()
            && !own
            && matches!(claim.state, ClaimState::Open),
        photo,
        may_delete: own || judges(scene.role),
        state,
        reason,
    }
}
