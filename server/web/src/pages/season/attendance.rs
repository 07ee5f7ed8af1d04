//! Page: attendance, for a club's report on its hall.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::App;
use askama::Template;
use league::standings::WeekAttendance;

use super::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::paths::SeasonPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "attendance.html")]
struct AttendancePage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    weeks: Vec<WeekAttendance>,
}
page_template!(AttendancePage);

#[get("/clubs/{club}/seasons/{season}/attendance")]
pub async fn show_attendance(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
) -> PageResult {
    let season = path.key();
    let context = SeasonContext::load(&app, &request, season).await?;
    let found = app::standings::find_attendance(&app, request.viewer, season).await?;
    render_page(&AttendancePage {
        layout: request.layout(),
        t: request.t,
        header: context.header(&request, SeasonTab::Statistics),
        weeks: found.weeks,
    })
}
