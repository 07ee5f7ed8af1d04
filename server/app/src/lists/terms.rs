//! The terms of one player's list in one week: cap, catalogue, rules, previous list and paint, loaded in
//! one place.

use std::sync::Arc;

use document::lists::army_list::ArmyListDocument;
use document::season::policy::Policy;
use futures_util::future::try_join;
use league::catalogue::Catalogue;
use league::catalogue::diff::{TouchedEntry, find_touched_entries};
use league::catalogue::key::FactionKey;
use league::ids::PlayerId;
use league::keys::WeekKey;
use league::lists::PaintedModels;
use league::lists::rules::ListRule;
use league::lists::{ArmyList, CheckReport, ListTerms, PreviousList, Severity, check};
use league::painting::painted_models;
use league::week::WeekNo;
use messages::{Message, army_lists, refusals};
use serde_json::json;
use store::Conn;
use store::lists::SealedListRow;
use store::players::Player;
use store::week_limits::WeekLimits;

use crate::access::{RunningSeason, authorize_player, must_play};
use crate::{Actor, App, Fault, Reason, Refusal};

/// What a player's list of the week is checked against.
pub(super) struct WeekTerms {
    week: WeekNo,
    cap: league::points::Points,
    pub catalogue: Arc<Catalogue>,
    catalogue_number: i32,
    rules: Vec<ListRule>,
    pub faction: FactionKey,
    pub last: Option<LastList>,
    painted: PaintedModels,
}

/// The list that a player sealed last before the week.
pub(super) struct LastList {
    pub week: WeekNo,
    pub list: ArmyList,
    /// Its own version: it keeps the points it was sealed with.
    pub catalogue: Arc<Catalogue>,
    catalogue_number: i32,
}

impl LastList {
    pub fn previous(&self) -> PreviousList<'_> {
        PreviousList {
            list: &self.list,
            catalogue: &self.catalogue,
        }
    }
}

/// The weeks of two lists are pinned to different versions of the catalogue.
#[derive(Clone, Debug)]
pub struct VersionChange {
    /// The version of the last list.
    pub before: i32,
    /// The version of this week.
    pub now: i32,
    /// The last list's entries whose points or availability differ.
    pub touched: Vec<TouchedEntry>,
}

type SealedBefore = (WeekNo, SealedListRow);

async fn find_last(
    conn: &Conn,
    season: RunningSeason,
    week: WeekNo,
    player: PlayerId,
) -> Result<Option<SealedBefore>, Refusal> {
    if week == WeekNo::FIRST {
        return Ok(None);
    }
    let key = season.key;
    let last = store::lists::find_last_sealed(conn, key.week(week), player).await?;
    Ok(last.and_then(|last| Some((last.week, last.sealed?))))
}

async fn find_painted(
    conn: &Conn,
    season: RunningSeason,
    policy: &Policy,
    week: WeekNo,
    player: PlayerId,
) -> Result<PaintedModels, Refusal> {
    let needs_paint = |rule: &ListRule| rule.needs_painted_models() && rule.weeks.contains(week);
    if !policy.list_rules.iter().any(needs_paint) {
        return Ok(PaintedModels::new());
    }
    let log = store::painting::find_log(conn, season.key, Some(player)).await?;
    Ok(painted_models(&policy.painting, player, week, &log))
}

impl WeekTerms {
    /// Models are counted only where a rule looks at their paint.
    ///
    /// # Errors
    /// [`Refusal::Internal`] when a stored value can no longer be read.
    pub async fn load(
        app: &App,
        conn: &Conn,
        season: RunningSeason,
        week: WeekLimits,
        player: &Player,
    ) -> Result<Self, Refusal> {
        let policy = app.rules_cache.get_or_load(conn, season).await?;
        let last = find_last(conn, season, week.week, player.id);
        let painted = find_painted(conn, season, &policy, week.week, player.id);
        let (last, painted) = try_join(last, painted).await?;
        let catalogue_cache = &app.catalogue_cache;
        let find =
            |number| catalogue_cache.get_or_load(conn, season.key.club, season.catalogue, number);
        let last = match last {
            Some((week, sealed)) => Some(LastList {
                week,
                list: ArmyList::try_from(sealed.list).map_err(|faults| unreadable(&faults))?,
                catalogue: find(sealed.catalogue_number).await?,
                catalogue_number: sealed.catalogue_number,
            }),
            None => None,
        };
        Ok(Self {
            week: week.week,
            cap: week.cap,
            catalogue: find(week.catalogue_number).await?,
            catalogue_number: week.catalogue_number,
            rules: policy.list_rules.clone(),
            faction: FactionKey::new(&player.faction).map_err(|fault| unreadable(&fault))?,
            last,
            painted,
        })
    }

    /// In the form the rules need.
    pub fn terms(&self) -> ListTerms<'_> {
        ListTerms {
            week: self.week,
            cap: self.cap,
            rules: &self.rules,
            faction: Some(&self.faction),
            previous: self.last.as_ref().map(LastList::previous),
            painted: Some(&self.painted),
        }
    }

    /// What the version of this week makes of the last list; `None` where it is the same one.
    pub fn version_change(&self) -> Option<VersionChange> {
        let last = self.last.as_ref()?;
        (last.catalogue_number != self.catalogue_number).then(|| VersionChange {
            before: last.catalogue_number,
            now: self.catalogue_number,
            touched: find_touched_entries(&last.list, &last.catalogue, &self.catalogue),
        })
    }

    /// The total and every finding.
    pub fn check(&self, list: &ArmyList) -> CheckReport {
        check(list, &self.catalogue, &self.terms())
    }
}

/// What the actor's own list of a week is held against.
///
/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::SeasonState`],
/// [`Reason::PlayerLeft`].
pub(super) async fn find_own_terms(
    app: &App,
    actor: Actor,
    week: WeekKey,
) -> Result<WeekTerms, Refusal> {
    app.store
        .read(async |conn| {
            let (season, player) = authorize_player(conn, actor.account, week.season).await?;
            must_play(&player, week.week)?;
            let week = store::week_limits::find(conn, week).await?;
            WeekTerms::load(app, conn, season, week, &player).await
        })
        .await
}

/// The list in the form the rules need.
///
/// # Errors
/// [`Reason::Validation`] with every fault.
pub(super) fn parse_list(document: ArmyListDocument) -> Result<ArmyList, Refusal> {
    ArmyList::try_from(document).map_err(|faults| {
        let faults = faults.into_iter().map(Fault::from).collect();
        Refusal::faults(Reason::Validation, army_lists::list_faults(), faults)
    })
}

/// # Errors
/// [`Reason::PointsCapExceeded`] or [`Reason::ListBreaksRules`] with every breach, unless the report
/// has none.
pub(super) fn must_be_legal(list: &ArmyList, report: &CheckReport) -> Result<(), Refusal> {
    if report.is_accepted() {
        return Ok(());
    }
    let breaches = report
        .findings
        .iter()
        .filter(|finding| finding.severity == Severity::Breach);
    let faults: Vec<Fault> = breaches
        .map(|finding| {
            let place = finding.entries.first().and_then(|key| list.position(key));
            let pointer = place.map_or_else(String::new, |index| format!("/entries/{index}"));
            let fault = Fault::new(finding.code, pointer, finding.message().clone());
            match finding.measured {
                Some(measured) => fault.with(measured.limit, measured.actual),
                None => fault,
            }
        })
        .collect();
    let over = faults.iter().any(|fault| fault.code == "list.over-cap");
    let reason = if over {
        Reason::PointsCapExceeded
    } else {
        Reason::ListBreaksRules
    };
    let found: Vec<Message> = faults.iter().map(|fault| fault.message.clone()).collect();
    let message = refusals::sentences(found);
    Err(Refusal::faults(reason, message, faults).fact("total", json!(report.total.get())))
}

pub(super) fn unreadable(cause: &impl std::fmt::Debug) -> Refusal {
    Refusal::Internal(format!("what was kept cannot be read: {cause:?}"))
}
