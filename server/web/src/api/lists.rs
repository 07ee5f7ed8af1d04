//! API: army lists: draft, check, seal, open.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get, post, put, web};
use app::App;
use app::lists::{CheckedList, ListState, PlayerList, Receipt, SealedListRow, WeekLists};
use chrono::{DateTime, Utc};
use document::lists::army_list::ArmyListDocument;
use document::lists::cuts::CutDocument;
use document::lists::report::ReportDocument;
use league::ids::PlayerId;
use league::season::ListArrival;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use super::addresses;
use crate::authentication::{BearerSession, MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::if_match::optional_if_match;
use crate::paths::WeekPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, Created, NoContent, Versioned};

/// Your own list of a week.
#[derive(Serialize, ToSchema)]
pub struct OwnListView {
    /// Identity; part of the receipt.
    id: Uuid,
    /// What you are writing.
    draft: Option<ArmyListDocument>,
    /// Rises with every save; also the `ETag`.
    draft_revision: i32,
    /// What you handed in.
    sealed: Option<SealedListView>,
}

/// A sealed list.
#[derive(Serialize, ToSchema)]
pub struct SealedListView {
    /// The list.
    list: ArmyListDocument,
    /// Its points.
    points: u32,
    /// The version of the catalogue it is pinned to.
    catalogue_number: i32,
    /// The receipt, in hexadecimal.
    receipt: String,
    /// When it was sealed.
    sealed_at: DateTime<Utc>,
    /// Minutes after the end of the grace, when late.
    late_minutes: Option<u32>,
    /// Last week's list, put in because none came.
    stands_in: bool,
}

impl From<SealedListRow> for SealedListView {
    fn from(sealed: SealedListRow) -> Self {
        Self {
            list: sealed.list,
            points: sealed.points,
            catalogue_number: sealed.catalogue_number,
            receipt: hex::encode(sealed.digest),
            sealed_at: sealed.sealed_at,
            late_minutes: sealed.late_minutes,
            stands_in: sealed.stands_in,
        }
    }
}

/// Proof of what was sealed: `sha256sum` of the canonical JSON (RFC 8785) of `contents` is `digest`.
#[derive(Serialize, ToSchema)]
pub struct ReceiptView {
    /// What was sealed, with its salt.
    contents: document::lists::receipt::SealedList,
    /// SHA-256 in hexadecimal.
    digest: String,
    /// When.
    sealed_at: DateTime<Utc>,
    /// Minutes after the end of the grace, when late.
    late_minutes: Option<u32>,
    /// What the check said: remarks at most.
    report: ReportDocument,
}

impl From<Receipt> for ReceiptView {
    fn from(receipt: Receipt) -> Self {
        Self {
            contents: receipt.contents,
            digest: receipt.digest,
            sealed_at: receipt.sealed_at,
            late_minutes: match receipt.arrival {
                ListArrival::OnTime => None,
                ListArrival::Late { minutes } => Some(minutes),
            },
            report: (&receipt.report).into(),
        }
    }
}

/// What a check says of a list.
#[derive(Serialize, ToSchema)]
pub struct CheckedListView {
    /// The total and every finding.
    #[serde(flatten)]
    report: ReportDocument,
    /// Single steps that would bring the list under the cap, the smallest saving first; none when
    /// it is under the cap or no single step suffices.
    cuts: Vec<CutDocument>,
}

impl From<CheckedList> for CheckedListView {
    fn from(checked: CheckedList) -> Self {
        Self {
            report: (&checked.report).into(),
            cuts: checked.cuts.iter().map(Into::into).collect(),
        }
    }
}

/// The revision of a saved draft.
#[derive(Serialize, ToSchema)]
pub struct DraftView {
    /// Rises with every save.
    draft_revision: i32,
}

/// The lists of a week: whole ones once opened, before that only who has one.
#[derive(Serialize, ToSchema)]
pub struct WeekListsView {
    /// Whether the lists are opened.
    opened: bool,
    /// One for each player of the week, who may have none; and lists of those who withdrew since.
    lists: Vec<PlayerListView>,
}

/// One player's list, as far as it may be seen.
#[derive(Serialize, ToSchema)]
pub struct PlayerListView {
    /// The player.
    player: Uuid,
    /// How far the player is.
    state: ListStateWord,
    /// The list, once opened.
    #[serde(skip_serializing_if = "Option::is_none")]
    sealed: Option<SealedListView>,
}

/// How far a player is.
#[derive(Clone, Copy, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum ListStateWord {
    /// Nothing begun; once the lists are opened, nothing handed in.
    Missing,
    /// Begun.
    Draft,
    /// Handed in.
    Sealed,
}

impl From<WeekLists> for WeekListsView {
    fn from(lists: WeekLists) -> Self {
        match lists {
            WeekLists::Opened(lists) => Self {
                opened: true,
                lists: lists
                    .into_iter()
                    .map(|(player, sealed)| PlayerListView {
                        player: player.0,
                        state: match sealed {
                            Some(_) => ListStateWord::Sealed,
                            None => ListStateWord::Missing,
                        },
                        sealed: sealed.map(SealedListView::from),
                    })
                    .collect(),
            },
            WeekLists::States(states) => Self {
                opened: false,
                lists: states
                    .into_iter()
                    .map(|(player, state)| PlayerListView {
                        player: player.0,
                        state: match state {
                            ListState::Missing => ListStateWord::Missing,
                            ListState::Draft => ListStateWord::Draft,
                            ListState::Sealed => ListStateWord::Sealed,
                        },
                        sealed: None,
                    })
                    .collect(),
            },
        }
    }
}

impl From<PlayerList> for OwnListView {
    fn from(list: PlayerList) -> Self {
        Self {
            id: list.id.0,
            draft: list.draft,
            draft_revision: list.draft_revision,
            sealed: list.sealed.map(SealedListView::from),
        }
    }
}

/// Leave to hand in late.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LateLeaveBody {
    /// For whom.
    player: Uuid,
    /// Why; everybody can read it.
    #[schema(
        example = "Power cut in the whole street",
        min_length = 1,
        max_length = 4000
    )]
    reason: String,
}

/// Your own list of a week. Nobody else sees it before the lists are opened.
#[utoipa::path(tag = "lists", params(WeekPath), responses((status = 200, body = OwnListView), ProblemResponses))]
#[get("/weeks/{week}/list")]
pub async fn find_own_list(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
) -> ApiResult<Versioned<OwnListView>> {
    let week = path.key()?;
    let list = app::lists::find_own_list(&app, who.0, week).await?;
    Ok(Versioned {
        version: list.draft_revision.into(),
        view: list.into(),
    })
}

/// Save your draft. Send the revision you change as `If-Match`; leave it out for the first save.
#[utoipa::path(
    tag = "lists",
    params(WeekPath, ("If-Match" = Option<String>, Header, description = "The ETag of the draft you change")),
    responses((status = 200, body = DraftView), ProblemResponses)
)]
#[put("/weeks/{week}/list/draft")]
pub async fn save_draft(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    request: HttpRequest,
    body: Json<ArmyListDocument>,
) -> ApiResult<Versioned<DraftView>> {
    let week = path.key()?;
    let old = optional_if_match(&request)?;
    let new = app::lists::save_draft(&app, who.0, week, old, body.0).await?;
    Ok(Versioned {
        version: new.into(),
        view: DraftView {
            draft_revision: new,
        },
    })
}

/// Check a list against the week without saving anything.
#[utoipa::path(tag = "lists", params(WeekPath), responses((status = 200, body = CheckedListView), ProblemResponses))]
#[post("/weeks/{week}/list/check")]
pub async fn check_list(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<ArmyListDocument>,
) -> ApiResult<web::Json<CheckedListView>> {
    let week = path.key()?;
    let checked = app::lists::check_list(&app, who.0, week, body.0).await?;
    Ok(web::Json(checked.into()))
}

/// Hand in a list: it is checked, sealed and answered with a receipt. Until the deadline another one
/// takes its place.
#[utoipa::path(tag = "lists", params(WeekPath), responses((status = 201, body = ReceiptView), ProblemResponses))]
#[post("/weeks/{week}/list/seal")]
pub async fn seal_list(
    app: Data<App>,
    who: BearerSession,
    path: Path<WeekPath>,
    body: Json<ArmyListDocument>,
) -> ApiResult<Created<ReceiptView>> {
    let week = path.key()?;
    let receipt = app::lists::seal_list(&app, who.0, week, body.0).await?;
    let location = format!("{}/list", addresses::week(week));
    Ok(Created {
        location,
        view: receipt.into(),
    })
}

/// The lists of a week. Before they are opened only those who run the season learn who has one.
#[utoipa::path(tag = "lists", params(WeekPath), security((), ("bearer" = [])), responses((status = 200, body = WeekListsView), ProblemResponses))]
#[get("/weeks/{week}/lists")]
pub async fn list_lists(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<WeekPath>,
) -> ApiResult<web::Json<WeekListsView>> {
    let week = path.key()?;
    Ok(web::Json(
        app::lists::list_lists(&app, who.0, week).await?.into(),
    ))
}

/// Open all lists of a week, once the deadline and its grace are over. The server does it by itself.
#[utoipa::path(tag = "lists", params(WeekPath), responses((status = 204, description = "Opened"), ProblemResponses))]
#[post("/weeks/{week}/lists/open")]
pub async fn open_lists(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
) -> ApiResult<NoContent> {
    let week = path.key()?;
    app::lists::open_lists(&app, who.0, week).await?;
    Ok(NoContent)
}

/// Give a player leave to hand in late.
#[utoipa::path(tag = "lists", params(WeekPath), responses((status = 204, description = "Granted"), ProblemResponses))]
#[post("/weeks/{week}/late-leaves")]
pub async fn grant_late_leave(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<LateLeaveBody>,
) -> ApiResult<NoContent> {
    let week = path.key()?;
    let LateLeaveBody { player, reason } = body.0;
    let player = PlayerId(player);
    app::lists::grant_late_leave(&app, who.0, week, player, &reason).await?;
    Ok(NoContent)
}
