//! Checking a list without saving anything: as often as a player types.

use document::list::ArmyListDocument;
use league::ids::{ClubId, SeasonId};
use league::lists::{Cut, Report, cuts};
use league::week::WeekNo;

use super::terms::{find_own_terms, read};
use crate::aside::aside;
use crate::{Actor, Desk, Refusal};

/// What a check says of a list that is still on the table.
#[derive(Clone, Debug)]
pub struct Checked {
    /// The total and every finding.
    pub report: Report,
    /// Single steps that would bring it under the cap; none when it is under it.
    pub cuts: Vec<Cut>,
}

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::Validation`](crate::Reason) for
/// a list that is none.
pub async fn check_list(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    list: ArmyListDocument,
) -> Result<Checked, Refusal> {
    let list = read(list)?;
    let terms = find_own_terms(desk, actor, club, season, week).await?;
    aside(move || Checked {
        report: terms.check(&list),
        cuts: cuts(&list, &terms.catalogue, &terms.terms()),
    })
    .await
}
