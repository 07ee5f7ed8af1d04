//! Reminders of what people owe: a panel on the board for those who run the season, with text for the club's own
//! chat, and a notice on the page of each player concerned.

use std::borrow::Cow;

use actix_web::post;
use actix_web::web::{Data, Path};
use app::App;
use app::reminders::{PendingReminder, ReminderKind};
use league::ids::PlayerId;
use league::season::SeasonState;
use league::week::WeekNo;

use super::board;
use super::context::SeasonContext;
use super::season_page::SignedInSeasonPage;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_reader::FormReader;
use crate::pages::frame::page_request::PageRequest;
use crate::pages::frame::response::PageResult;
use crate::pages::week::panel::WeekPanel;
use crate::pages::words::local_time::LocalTime;
use crate::paths::WeekPath;
use crate::problem::Problem;
use messages::Texts;

/// What people can be reminded of in a week, as the board shows it.
pub struct ReminderPanel {
    /// The word that the form sends.
    pub word: &'static str,
    pub title: Cow<'static, str>,
    /// Who owes it.
    pub names: String,
    /// When people were last reminded.
    pub last: Option<LocalTime>,
    /// Whether they may be reminded now.
    pub due: bool,
    /// For the club's chat.
    pub words: String,
}

/// A notice to a player.
pub struct ReminderNotice {
    pub text: Cow<'static, str>,
    /// When the player was reminded.
    pub at: LocalTime,
}

#[post("/clubs/{club}/seasons/{season}/weeks/{week}/reminders")]
pub async fn send_reminders(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let actor = request.actor()?;
    let mut form = FormReader::new(&fields);
    let kinds = [ReminderKind::Lists, ReminderKind::Results].map(|kind| (kind.word(), kind));
    let about = form.choice("about", &request.t.remind(), kinds);
    let done = match form.finish(about) {
        Ok(about) => {
            let sent = app::reminders::send_reminders(&app, actor, week, about).await;
            sent.map(|_| ())
        }
        Err(refusal) => Err(refusal),
    };
    board::redirect_to_board(app, request, week.season, None, done).await
}

/// The reminders that can be sent in a week.
///
/// # Errors
/// When the server cannot tell.
pub async fn find_panels(
    page: &SignedInSeasonPage,
    week: &WeekPanel,
    number: WeekNo,
) -> Result<Vec<ReminderPanel>, Problem> {
    let context = &page.context;
    if context.season.state != SeasonState::Started {
        return Ok(Vec::new());
    }
    let key = page.key().week(number);
    let found = app::reminders::find_reminders(&page.app, page.actor, key).await?;
    Ok(found
        .into_iter()
        .map(|pending| build_panel(context, week, pending, page.t()))
        .collect())
}

fn build_panel(
    context: &SeasonContext,
    week: &WeekPanel,
    pending: PendingReminder,
    t: Texts,
) -> ReminderPanel {
    let names = names(context, &pending.players);
    let season = &context.season.name;
    let words = match pending.about {
        // Naming who is missing would tell who is not.
        ReminderKind::Lists => t.chat_lists(week.number, season, week.due.text()),
        ReminderKind::Results => t.chat_results(week.number, season, &names),
    };
    ReminderPanel {
        word: pending.about.word(),
        title: match pending.about {
            ReminderKind::Lists => t.owe_lists(),
            ReminderKind::Results => t.owe_results(),
        },
        names,
        last: pending.last.map(|at| context.times(t).short(at)),
        due: pending.due,
        words,
    }
}

fn names(context: &SeasonContext, players: &[PlayerId]) -> String {
    let names: Vec<&str> = players
        .iter()
        .map(|player| context.handle(*player))
        .collect();
    names.join(", ")
}

/// What a player was reminded of and still owes.
///
/// # Errors
/// When the server cannot tell.
pub async fn find_notices(
    page: &SignedInSeasonPage,
    week: WeekNo,
) -> Result<Vec<ReminderNotice>, Problem> {
    let (context, t) = (&page.context, page.t());
    let key = page.key().week(week);
    let found = app::reminders::find_own_reminders(&page.app, page.actor, key).await?;
    Ok(found
        .into_iter()
        .map(|(about, at)| ReminderNotice {
            text: match about {
                ReminderKind::Lists => t.notice_list(),
                ReminderKind::Results => t.notice_result(),
            },
            at: context.times(t).short(at),
        })
        .collect())
}
