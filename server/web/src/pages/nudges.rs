//! Reminding people of what they owe: a button for those who run the season, with words ready for the
//! club's own chat, and a notice to whoever is meant.

use actix_web::post;
use actix_web::web::{Data, Path};
use app::nudges::{About, NudgeDesk};
use app::{Actor, Desk};
use league::ids::PlayerId;
use league::season::SeasonState;

use super::address::InWeek;
use super::answer::PageAnswer;
use super::board;
use super::fields::Fields;
use super::moment::Moment;
use super::season_scene::SeasonScene;
use super::texts::{Phrase, Texts};
use super::visit::Visit;
use super::week_panel::WeekPanel;
use crate::problem::Problem;

/// What people can be reminded of in a week, as the board shows it.
pub struct NudgePanel {
    /// The word that the form sends.
    pub word: &'static str,
    /// What is missing.
    pub title: Phrase,
    /// Who owes it.
    pub names: String,
    /// When people were last reminded.
    pub last: Option<Moment>,
    /// Whether they may be reminded now.
    pub due: bool,
    /// For the club's chat.
    pub words: String,
}

/// A notice to a player.
pub struct Notice {
    /// What is missing.
    pub text: Phrase,
    /// When the player was reminded.
    pub at: Moment,
}

/// Reminds.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/nudges")]
pub async fn nudge_players(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let about = match fields.text("about") {
        "results" => About::Results,
        _ => About::Lists,
    };
    let done = app::nudges::nudge_players(&desk, visit.actor()?, club, season, week, about).await;
    board::told(&desk, &visit, club, season, done.map(|_| ())).await
}

/// What the board offers for a week.
///
/// # Errors
/// When the server cannot tell.
pub async fn panels(
    desk: &Desk,
    actor: Actor,
    scene: &SeasonScene,
    week: &WeekPanel,
    number: league::week::WeekNo,
    t: &'static Texts,
) -> Result<Vec<NudgePanel>, Problem> {
    if scene.season.state != SeasonState::Started {
        return Ok(Vec::new());
    }
    let (club, season) = (scene.season.club, scene.season.id);
    let found = app::nudges::find_nudges(desk, actor, club, season, number).await?;
    Ok(found
        .into_iter()
        .map(|desk| panel(scene, week, desk, t))
        .collect())
}

fn panel(scene: &SeasonScene, week: &WeekPanel, desk: NudgeDesk, t: &'static Texts) -> NudgePanel {
    let names = names(scene, &desk.players);
    let season = &scene.season.name;
    let words = match desk.about {
        // Naming who is missing would tell who is not.
        About::Lists => format!(
            "{}: {}",
            t.desk.chat_lists.with_two(week.number, season),
            week.due.words()
        ),
        About::Results => format!(
            "{} {names}",
            t.desk.chat_results.with_two(week.number, season)
        ),
    };
    NudgePanel {
        word: desk.about.word(),
        title: match desk.about {
            About::Lists => t.desk.owe_lists,
            About::Results => t.desk.owe_results,
        },
        names,
        last: desk.last.map(|at| scene.clock(t).short(at)),
        due: desk.due,
        words,
    }
}

fn names(scene: &SeasonScene, players: &[PlayerId]) -> String {
    let names: Vec<&str> = players.iter().map(|player| scene.handle(*player)).collect();
    names.join(", ")
}

/// What a player was reminded of and still owes.
///
/// # Errors
/// When the server cannot tell.
pub async fn notices(
    desk: &Desk,
    actor: Actor,
    scene: &SeasonScene,
    week: league::week::WeekNo,
    t: &'static Texts,
) -> Result<Vec<Notice>, Problem> {
    let (club, season) = (scene.season.club, scene.season.id);
    let found = app::nudges::find_own_nudges(desk, actor, club, season, week).await?;
    Ok(found
        .into_iter()
        .map(|(about, at)| Notice {
            text: match about {
                About::Lists => t.desk.notice_list,
                About::Results => t.desk.notice_result,
            },
            at: scene.clock(t).short(at),
        })
        .collect())
}
