//! Starting a season: fixes its rules, and commits the server to the seed of its draws.

use document::trail::TrailAct;
use league::keys::SeasonKey;
use league::pairing::round::draw::DrawSecret;
use league::season::{MIN_PLAYERS, SeasonState, check_start};
use messages::seasons;
use store::Conn;
use store::seasons::Season;

use crate::access::authorize;
use crate::rounds::seats::draw_seats;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal, secret};

/// Draws a secret seed and publishes its digest. Nobody sees the seed before the season ends, not
/// even the organiser.
///
/// # Errors
/// [`Reason::SeasonState`] unless it is a draft; [`Reason::NotEnoughPlayers`] for fewer than two; what
/// [`draw_seats`] says of a round robin.
pub async fn start_season(app: &App, actor: Actor, season: SeasonKey) -> Result<Season, Refusal> {
    let seed = secret::random_bytes()?;
    let secret = DrawSecret::new(seed);
    let commitment = secret.commitment().0;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, season).await?;
        if season.state != SeasonState::Draft {
            return Err(Refusal::rule(
                Reason::SeasonState,
                seasons::season_started_already(),
            ));
        }
        must_have_players(&mut tx, &season).await?;
        draw_seats(&mut tx, &season, &secret).await?;
        let now = store::clock::now(&tx).await?;
        store::seasons::start(&mut tx, season.key(), &seed, &commitment, now).await?;
        let act = TrailAct::StartSeason {
            seed_commitment: hex::encode(commitment),
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        let started = |version| Season {
            state: SeasonState::Started,
            started_at: Some(now),
            seed_commitment: Some(commitment.to_vec()),
            version,
            changed_at: now,
            ..season
        };
        Ok(tx.publish(change).await?.map(started))
    })
    .await
}

async fn must_have_players(conn: &mut Conn, season: &Season) -> Result<(), Refusal> {
    let players = store::players::list(conn, season.key()).await?;
    let there = players.iter().filter(|player| player.left_after.is_none());
    let there = there.count();
    check_start(there).map_err(|message| {
        let refusal = Refusal::rule(Reason::NotEnoughPlayers, message);
        refusal.fact("limit", MIN_PLAYERS).fact("actual", there)
    })
}
