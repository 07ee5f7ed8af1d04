//! Updating a season's name, visibility, places or rules. Rules are fixed once it has started: a
//! rule that changes under the players would change results that stand.

use document::season::policy::PolicyDocument;
use document::trail::TrailAct;
use league::keys::SeasonKey;
use league::season::{SeasonState, Visibility, check_visibility_change};
use messages::{refusals, seasons};
use store::seasons::Season;

use super::create_season::places_fault;
use super::satisfiable::{must_be_satisfiable, pinned_week};
use crate::access::{authorize, policy};
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal, user_text};

/// What to change; what is absent stays.
#[derive(Clone, Debug, Default)]
pub struct UpdateSeason {
    /// The version that the change was made against.
    pub version: i64,
    pub name: Option<String>,
    /// Who may look.
    pub visibility: Option<Visibility>,
    /// Most players.
    pub places: Option<u16>,
    /// Rules, as a whole.
    pub policy: Option<PolicyDocument>,
}

/// # Errors
/// [`Reason::VersionMismatch`], [`Reason::SeasonFixed`] for rules, and for opening a season of the club
/// to everybody, after the start,
/// [`Reason::Validation`], [`Reason::RulesUnsatisfiable`].
pub async fn update_season(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    command: UpdateSeason,
) -> Result<Season, Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, season.club, Action::RunSeason).await?;
        let mut season = store::seasons::lock(&mut tx, season).await?;
        if season.version != command.version {
            return Err(version_mismatch(season.version));
        }
        let new_rules = command.policy.is_some();
        apply(&mut season, command.clone())?;
        let weeks = store::weeks::list(&tx, season.key()).await?;
        if season.state == SeasonState::Draft {
            policy::check(&season.policy, policy::season_size(&weeks, season.places))?;
        }
        if new_rules {
            must_be_satisfiable(
                &mut tx,
                &season,
                weeks.iter().map(pinned_week).collect(),
                Some("/policy/list_rules"),
            )
            .await?;
        }
        store::seasons::update(&mut tx, &season).await?;
        let now = store::clock::now(&tx).await?;
        let act = TrailAct::UpdateSeason {
            name: season.name.clone(),
            places: season.places,
            visibility: season.visibility.into(),
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.map(|version| Season {
            version,
            changed_at: now,
            ..season
        }))
    })
    .await
}

fn apply(season: &mut Season, command: UpdateSeason) -> Result<(), Refusal> {
    if let Some(name) = command.name {
        let name = user_text::parse_name(&name, "/name", refusals::name_fault)?;
        season.name = name.to_string();
    }
    if let Some(policy) = command.policy {
        if season.state != SeasonState::Draft {
            return Err(Refusal::fault(
                Reason::SeasonFixed,
                "/policy",
                seasons::rules_fixed(),
            ));
        }
        season.policy = policy;
    }
    if let Some(visibility) = command.visibility {
        check_visibility_change(season.state, season.visibility, visibility)
            .map_err(|fault| Refusal::fault(Reason::SeasonFixed, "/visibility", fault.message()))?;
        season.visibility = visibility;
    }
    if let Some(fault) = command.places.and_then(places_fault) {
        return Err(Refusal::of_fault(Reason::Validation, fault));
    }
    season.places = command.places.or(season.places);
    Ok(())
}

fn version_mismatch(version: i64) -> Refusal {
    Refusal::rule(Reason::VersionMismatch, seasons::season_stale()).fact("version", version)
}
