//! A player's army over the weeks.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::Desk;
use app::lists::{ArmyWeek, Fielded};
use serde::Serialize;
use std::collections::BTreeMap;
use utoipa::ToSchema;

use super::players::OnePlayer;
use crate::answer::{Answer, Versioned};
use crate::problem::Problems;
use crate::who::Caller;

/// An army, week by week.
#[derive(Serialize, ToSchema)]
pub struct ArmyView {
    /// The season's version that it belongs to; also the `ETag`.
    version: i64,
    /// Every week of the season.
    weeks: Vec<ArmyWeekView>,
}

/// One week of an army.
#[derive(Serialize, ToSchema)]
pub struct ArmyWeekView {
    /// Number of the week.
    week: u8,
    /// The points cap.
    cap: u32,
    /// What was fielded; null while the lists are closed and where there is none.
    fielded: Option<FieldedView>,
}

/// What one opened list says.
#[derive(Serialize, ToSchema)]
pub struct FieldedView {
    /// Army points of the list.
    points: u32,
    /// Army points by unit kind.
    #[schema(example = json!({"leader": 75, "line": 210}))]
    kinds: BTreeMap<String, u32>,
    /// Army points newly finished in this week.
    newly_finished: u32,
}

/// What a player fielded and painted week by week, as far as lists are opened.
#[utoipa::path(tag = "lists", security((), ("bearer" = [])), responses((status = 200, body = ArmyView), Problems))]
#[get("/clubs/{club}/seasons/{season}/players/{player}/army")]
pub async fn find_army(
    desk: Data<Desk>,
    who: Caller,
    path: Path<OnePlayer>,
) -> Answer<Versioned<ArmyView>> {
    let (club, season, player) = path.ids();
    let army = app::lists::find_army(&desk, who.0, club, season, player).await?;
    Ok(Versioned {
        version: army.version,
        view: ArmyView {
            version: army.version,
            weeks: army.weeks.iter().map(week_view).collect(),
        },
    })
}

fn week_view(week: &ArmyWeek) -> ArmyWeekView {
    ArmyWeekView {
        week: week.week.number(),
        cap: week.cap.get(),
        fielded: week.fielded.as_ref().map(fielded_view),
    }
}

fn fielded_view(list: &Fielded) -> FieldedView {
    let kinds = list.kinds.iter();
    FieldedView {
        points: list.total().get(),
        kinds: kinds
            .map(|(kind, points)| (kind.to_string(), points.get()))
            .collect(),
        newly_finished: list.newly_finished.get(),
    }
}
