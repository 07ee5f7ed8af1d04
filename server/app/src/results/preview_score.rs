//! Previewing the score of typed counts: the result, or which counts are impossible. Nothing is saved.

use document::results::TypedResultDocument;
use league::keys::GameKey;
use league::points::LeaguePoints;
use league::result::{CountFault, Outcome};
use league::side::PerSide;

use super::own_game::players_of;
use super::score_result::{ScoringInputs, load_scoring_inputs, parse_result};
use crate::access::{policy, view_season};
use crate::seasons::{VisibleScenario, visible_scenario};
use crate::{App, Refusal, Viewer};

/// What counts would come to.
#[derive(Clone, Debug)]
pub enum ScorePreview {
    Possible {
        outcome: Outcome,
        /// League points with the week's factor; none for a game struck from the record.
        points: Option<PerSide<LeaguePoints>>,
    },
    /// Every count that cannot be.
    Impossible(Vec<CountFault>),
}

/// # Errors
/// [`Refusal::NotFound`] for a bye and while the scenario is not fully revealed to the viewer,
/// [`Reason::Validation`](crate::Reason::Validation) for a document that is none.
pub async fn preview_score(
    app: &App,
    viewer: Viewer,
    game: GameKey,
    typed: TypedResultDocument,
) -> Result<ScorePreview, Refusal> {
    let typed = parse_result(typed)?;
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, game.season).await?;
            let game = store::games::find(conn, game).await?;
            let players = players_of(&game)?;
            let week = store::weeks::find(conn, view.season.key().week(game.week)).await?;
            let now = store::clock::now(conn).await?;
            let Some(VisibleScenario::Full(_)) = visible_scenario(&view, &week, now) else {
                return Err(Refusal::NotFound);
            };
            let ScoringInputs { sheet, armies } =
                load_scoring_inputs(conn, &view.season, &week, players).await?;
            let scoring = policy::parse(&view.season)?.scoring;
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
