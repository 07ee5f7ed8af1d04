//! Everything a list of one player in one week is held against, loaded in one place.

use document::list::ArmyListDocument;
use league::catalogue::Catalogue;
use league::catalogue::key::FactionKey;
use league::ids::PlayerId;
use league::lists::rules::ListRule;
use league::lists::{ArmyList, Previous, Report, Severity, Terms, check};
use league::week::WeekNo;
use serde_json::json;
use store::Conn;
use store::players::Player;
use store::seasons::Season;
use store::weeks::Week;

use crate::seasons::policy;
use crate::{Fault, Reason, Refusal, catalogues};

/// The week's demands on one player's list.
pub(super) struct WeekTerms {
    week: WeekNo,
    cap: league::points::Points,
    pub catalogue: Catalogue,
    rules: Vec<ListRule>,
    faction: FactionKey,
    previous: Option<(ArmyList, Catalogue)>,
}

impl WeekTerms {
    /// # Errors
    /// [`Refusal::Broken`] when something that was kept can no longer be read.
    pub async fn load(
        conn: &mut Conn,
        season: &Season,
        week: &Week,
        player: &Player,
    ) -> Result<Self, Refusal> {
        let number = week.catalogue_number;
        let (club, id) = (season.club, season.catalogue);
        let catalogue = catalogues::load(conn, club, id, number).await?;
        let rules = policy::read(season)?.list_rules;
        let faction = FactionKey::new(&player.faction).map_err(|fault| broken(&fault))?;
        let previous = load_previous(conn, season, week.week, player.id).await?;
        Ok(Self {
            week: week.week,
            cap: week.cap,
            catalogue,
            rules,
            faction,
            previous,
        })
    }

    /// The faction that the player declared.
    pub fn faction(&self) -> &FactionKey {
        &self.faction
    }

    /// The list sealed last before this week.
    pub fn previous(&self) -> Option<&ArmyList> {
        self.previous.as_ref().map(|(list, _)| list)
    }

    /// The total and every finding.
    pub fn check(&self, list: &ArmyList) -> Report {
        let previous = self.previous.as_ref();
        let terms = Terms {
            week: self.week,
            cap: self.cap,
            rules: &self.rules,
            faction: Some(&self.faction),
            previous: previous.map(|(list, catalogue)| Previous { list, catalogue }),
            painted: None,
        };
        check(list, &self.catalogue, &terms)
    }
}

/// The list in the form the rules need.
///
/// # Errors
/// [`Reason::Validation`] with every fault.
pub(super) fn read(document: ArmyListDocument) -> Result<ArmyList, Refusal> {
    ArmyList::try_from(document).map_err(|faults| {
        let faults = faults.into_iter().map(Fault::from).collect();
        Refusal::faults(Reason::Validation, "The list has faults.", faults)
    })
}

/// # Errors
/// [`Reason::PointsCapExceeded`] or [`Reason::ListBreaksRules`] with every breach, unless the report
/// has none.
pub(super) fn must_be_legal(list: &ArmyList, report: &Report) -> Result<(), Refusal> {
    if report.accepted() {
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
            let fault = Fault::new(finding.code, pointer, finding.sentence());
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
    let detail = faults
        .iter()
        .map(|fault| fault.detail.as_str())
        .collect::<Vec<_>>()
        .join(" ");
    Err(Refusal::faults(reason, detail, faults).fact("total", json!(report.total.get())))
}

async fn load_previous(
    conn: &mut Conn,
    season: &Season,
    week: WeekNo,
    player: PlayerId,
) -> Result<Option<(ArmyList, Catalogue)>, Refusal> {
    let (club, id) = (season.club, season.id);
    let lists = store::lists::list_sealed_before(conn, club, id, week, player).await?;
    let Some(sealed) = lists.into_iter().next_back().and_then(|last| last.sealed) else {
        return Ok(None);
    };
    let list = ArmyList::try_from(sealed.list).map_err(|faults| broken(&faults))?;
    let number = sealed.catalogue_number;
    let catalogue = catalogues::load(conn, club, season.catalogue, number).await?;
    Ok(Some((list, catalogue)))
}

fn broken(cause: &impl std::fmt::Debug) -> Refusal {
    Refusal::Broken(format!("what was kept cannot be read: {cause:?}"))
}
