//! Deciding a painting claim: by the opponent of the week at the table, or by a referee.

use document::trail::TrailAct;
use league::club_role::ClubRole;
use league::ids::ClaimId;
use league::keys::SeasonKey;
use league::name::Text;
use league::painting::{Checker, PaintingClaim};
use league::pairing::Pair;
use league::time::Instant;
use messages::painting;
use store::Conn;
use store::seasons::Season;

use super::claim_painting::claim_refusal;
use crate::access::{authorize, must_be_started, policy, view_season};
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal, user_text};

/// Agrees with a claim, as the opponent of that week or as a referee.
///
/// # Errors
/// [`Reason::ConflictOfInterest`] for one's own claim, [`Reason::Forbidden`] for anybody else,
/// [`Reason::ClaimStateChanged`] when it was decided in between, [`Refusal::NotFound`] before the
/// lists of its week are opened.
pub async fn verify_claim(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    claim: ClaimId,
) -> Result<PaintingClaim, Refusal> {
    decide(app, actor, season, claim, None).await
}

/// Disagrees, with a reason for the player to read; a referee may also take a check back.
///
/// # Errors
/// As [`verify_claim`], and [`Reason::InvalidText`].
pub async fn refuse_claim(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    claim: ClaimId,
    reason: &str,
) -> Result<PaintingClaim, Refusal> {
    let reason = user_text::parse_reason(reason)?;
    decide(app, actor, season, claim, Some(reason)).await
}

async fn decide(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    claim: ClaimId,
    refused: Option<Text>,
) -> Result<PaintingClaim, Refusal> {
    app.write(async |mut tx| {
        let role = authorize(&mut tx, actor, season.club, Action::Play).await?;
        let season = view_season(&mut tx, Some(actor), season).await?.season;
        must_be_started(&season)?;
        let claim = store::painting::lock(&mut tx, season.key(), claim).await?;
        let week = store::weeks::find(&mut tx, season.key().week(claim.made.week)).await?;
        if week.facts.lists_opened_at.is_none() {
            // The claim names a unit of a list that is still sealed.
            return Err(Refusal::NotFound);
        }
        let painting = policy::parse(&season)?.painting;
        let checker = checker(&mut tx, actor, role, &season, &claim).await?;
        let player = claim.made.player;
        let owner = store::players::find(&tx, season.key(), player)
            .await?
            .account;
        let now: Instant = store::clock::now(&tx).await?;
        let is_refusal = refused.is_some();
        let decided = match refused.clone() {
            Some(reason) => claim.refuse(checker, actor.account, owner, reason, now),
            None => claim.verify(&painting, checker, actor.account, owner, now),
        };
        let claim = decided.map_err(claim_refusal)?;
        store::painting::update(&mut tx, season.key(), &claim).await?;
        let (claim_id, player) = (claim.made.id.0, player.0);
        let act = match is_refusal {
            true => TrailAct::RefuseClaim {
                claim: claim_id,
                player,
            },
            false => TrailAct::VerifyClaim {
                claim: claim_id,
                player,
            },
        };
        let change = SeasonChange {
            changes_closed_week_from: Some(claim.made.week),
            ..SeasonChange::new(season.key(), actor, now, act)
        };
        Ok(tx.publish(change).await?.with(claim))
    })
    .await
}

async fn checker(
    conn: &mut Conn,
    actor: Actor,
    role: ClubRole,
    season: &Season,
    claim: &PaintingClaim,
) -> Result<Checker, Refusal> {
    let key = season.key();
    let own = store::players::find_by_account(conn, key, actor.account).await?;
    let games = store::games::list(conn, key, Some(claim.made.week)).await?;
    let pair = own.and_then(|own| Pair::new(own.id, claim.made.player));
    let is_opponent = games.iter().any(|game| {
        let second = game.meeting.as_ref().map(|meeting| meeting.second);
        pair.is_some() && second.and_then(|second| Pair::new(game.first, second)) == pair
    });
    Checker::find(role, is_opponent, claim.made.evidence)
        .ok_or_else(|| Refusal::rule(Reason::Forbidden, painting::claim_checkers()))
}
