//! What would still fit into a list and keep it as legal as it is.

use document::list::ArmyListDocument;
use league::ids::{ClubId, SeasonId};
use league::lists::{Fits, fits};
use league::week::WeekNo;

use super::terms::{find_own_terms, read};
use crate::aside::aside;
use crate::{Actor, Desk, Refusal};

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::Validation`](crate::Reason) for
/// a list that is none.
pub async fn find_fits(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    list: ArmyListDocument,
) -> Result<Fits, Refusal> {
    let list = read(list)?;
    let terms = find_own_terms(desk, actor, club, season, week).await?;
    aside(move || fits(&list, &terms.catalogue, &terms.terms())).await
}
