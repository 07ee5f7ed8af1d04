//! The sum as it is typed: what counts would give, or which of them cannot be. Nothing is saved.

use document::result::TypedResultDocument;
use league::ids::{ClubId, GameId, SeasonId};
use league::points::LeaguePoints;
use league::result::{Impossible, Outcome};
use league::side::Both;

use super::outcome::{Ground, ground, read};
use super::place::both;
use crate::seasons::find_scenario::{ScenarioSeen, seen};
use crate::seasons::look::look;
use crate::seasons::policy;
use crate::{Desk, Refusal, Viewer};

/// What counts would come to.
#[derive(Clone, Debug)]
pub enum ScorePreview {
    /// A result.
    Possible {
        /// With its score.
        outcome: Outcome,
        /// League points with the week's factor; none for a game struck from the record.
        points: Option<Both<LeaguePoints>>,
    },
    /// Every count that cannot be.
    Impossible(Vec<Impossible>),
}

/// # Errors
/// [`Refusal::NotFound`] for a bye and while the scenario is not fully revealed to the viewer,
/// [`Reason::Validation`](crate::Reason::Validation) for a document that is none.
pub async fn preview_score(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    game: GameId,
    typed: TypedResultDocument,
) -> Result<ScorePreview, Refusal> {
    let typed = read(typed)?;
    desk.store
        .read(async |conn| {
            let look = look(conn, viewer, club, season).await?;
            let game = store::games::find(conn, club, season, game).await?;
            let players = both(&game)?;
            let week = store::weeks::find(conn, club, season, game.week).await?;
            let now = store::clock::now(conn).await?;
            let Some(ScenarioSeen::Full(_)) = seen(&look, &week, now) else {
                return Err(Refusal::NotFound);
            };
            let Ground { sheet, armies } = ground(conn, &look.season, &week, players).await?;
            let scoring = policy::read(&look.season)?.scoring;
            Ok(match typed.outcome(&sheet, &armies) {
                Err(impossible) => ScorePreview::Impossible(impossible),
                Ok(outcome) => ScorePreview::Possible {
                    points: scoring.points_in(week.week, &outcome, week.cap),
                    outcome,
                },
            })
        })
        .await
}
