//! Claiming how far the models of a unit are painted.

use document::painting::rules::ModelStagesDocument;
use document::trail::TrailAct;
use league::ids::{ClaimId, PlayerId};
use league::keys::WeekKey;
use league::lists::EntryKey;
use league::painting::{
    ClaimRefusal, Evidence, ModelStages, NewClaim, PaintingClaim, PhotoDigest, accept_claim,
};
use messages::{painting, refusals};
use store::Conn;
use uuid::Uuid;

use crate::access::{RunningSeason, authorize_player, must_play};
use crate::season_change::{OfficersEntry, SeasonChange};
use crate::{Actor, App, Fault, Reason, Refusal};

/// What a player says of a unit.
#[derive(Clone, Debug)]
pub struct ClaimPainting {
    /// Key of the unit in the player's lists.
    pub unit: String,
    /// How far its models are.
    pub stages: ModelStagesDocument,
    /// A photo of them, sent before; without one they are shown at the table.
    pub photo: Option<PhotoDigest>,
}

/// Before the lists of the week are opened only those who judge learn that somebody claimed. They also
/// learn of claims of others whose photos look like this one.
///
/// # Errors
/// [`Reason::WeekState`] outside an announced, open week; [`Reason::Validation`] when nothing is new
/// or paint would come off, or the photo is not the player's own; [`Reason::PhotoAlreadyUsed`].
pub async fn claim_painting(
    app: &App,
    actor: Actor,
    week: WeekKey,
    command: ClaimPainting,
) -> Result<PaintingClaim, Refusal> {
    let unit = EntryKey::new(&command.unit).map_err(|fault| {
        Refusal::fault(
            Reason::Validation,
            "/unit",
            refusals::unit_fault(fault.message()),
        )
    })?;
    let stages = ModelStages::try_from(command.stages).map_err(|fault| {
        Refusal::fault(
            Reason::Validation,
            "/stages",
            painting::stages_fault(fault.message()),
        )
    })?;
    app.write(async |mut tx| {
        let (season, player) = authorize_player(&tx, actor.account, week.season).await?;
        let player = must_play(&player, week.week)?;
        let facts = store::week_limits::lock_shared(&tx, week).await?.facts;
        let now = store::clock::now(&tx).await?;
        if !facts.takes_claims(now) {
            let message = painting::claim_week();
            return Err(Refusal::rule(Reason::WeekState, message));
        }
        let painting = &app.rules_cache.get_or_load(&tx, season).await?.painting;
        let log = store::painting::find_log(&tx, season.key, Some(player)).await?;
        let record = log.record_of(painting, &unit);
        let made = NewClaim {
            id: ClaimId(Uuid::new_v4()),
            player,
            week: week.week,
            unit: unit.clone(),
            stages,
            evidence: command.photo.map_or(Evidence::AtTable, Evidence::Photo),
            at: now,
        };
        let alike = match command.photo {
            None => Vec::new(),
            Some(photo) => claims_of_look_alikes(&mut tx, season, player, photo).await?,
        };
        let has_look_alikes = !alike.is_empty();
        let claim = accept_claim(
            painting,
            record.as_ref(),
            |photo| used_by(&log.claims, photo),
            made,
        )
        .map_err(claim_refusal)?;
        store::painting::create(&mut tx, season.key, &claim).await?;
        let act = |looks_like| TrailAct::ClaimPainting {
            claim: claim.made.id.0,
            player: player.0,
            week: week.week.number(),
            looks_like,
        };
        let for_officers = act(Some(alike));
        let finished = if facts.lists_opened_at.is_none() {
            let entry = OfficersEntry::in_season(season.key, actor, now, for_officers);
            tx.record(entry).await?
        } else {
            let change = SeasonChange {
                officers_act: has_look_alikes.then_some(for_officers),
                ..SeasonChange::new(season.key, actor, now, act(None))
            };
            tx.publish(change).await?.with(())
        };
        Ok(finished.with(claim))
    })
    .await
}

fn used_by(earlier: &[PaintingClaim], photo: PhotoDigest) -> Option<ClaimId> {
    let mut earlier = earlier.iter();
    let used = earlier.find(|claim| claim.made.evidence == Evidence::Photo(photo));
    used.map(|claim| claim.made.id)
}

/// The claims of others whose photos seem to show the same as this one of the player's own.
async fn claims_of_look_alikes(
    conn: &mut Conn,
    season: RunningSeason,
    player: PlayerId,
    photo: PhotoDigest,
) -> Result<Vec<Uuid>, Refusal> {
    let known = store::photos::list(conn, season.key).await?;
    let own = known
        .iter()
        .find(|known| (known.player, known.digest) == (player, photo))
        .ok_or_else(|| {
            let message = painting::photo_not_sent();
            Refusal::fault(Reason::Validation, "/photo", message)
        })?;
    let alike: Vec<_> = known
        .iter()
        .filter(|other| other.player != player && other.likeness.resembles(own.likeness))
        .map(|other| (other.player, Evidence::Photo(other.digest)))
        .collect();
    let claims = store::painting::list(conn, season.key, None).await?;
    let stands_on = |made: &NewClaim| alike.contains(&(made.player, made.evidence));
    let claims = claims.iter().filter(|claim| stands_on(&claim.made));
    Ok(claims.map(|claim| claim.made.id.0).collect())
}

pub(super) fn photo_used() -> Refusal {
    Refusal::rule(Reason::PhotoAlreadyUsed, painting::photo_used())
}

pub(super) fn claim_refusal(why: ClaimRefusal) -> Refusal {
    let reason = match why {
        ClaimRefusal::OwnClaim => Reason::ConflictOfInterest,
        ClaimRefusal::Decided => Reason::ClaimStateChanged,
        ClaimRefusal::NotAccepted(_) => Reason::Forbidden,
        ClaimRefusal::PhotoUsed(_) => return photo_used(),
        ClaimRefusal::NothingNew | ClaimRefusal::GoesBack | ClaimRefusal::NoPhoto => {
            Reason::Validation
        }
    };
    let fault = Fault::new(why.code(), "", refusals::not_done(why.message()));
    Refusal::of_fault(reason, fault)
}
