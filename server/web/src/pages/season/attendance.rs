//! Page: attendance, for a club's report on its hall.

use actix_web::get;
use askama::Template;
use league::standings::WeekAttendance;

use super::context::{SeasonHeader, SeasonTab};
use super::season_page::SeasonPage;
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
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
pub async fn show_attendance(page: SeasonPage) -> PageResult {
    let found = app::standings::find_attendance(&page.app, page.viewer(), page.key()).await?;
    render_page(&AttendancePage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Statistics),
        weeks: found.weeks,
    })
}
