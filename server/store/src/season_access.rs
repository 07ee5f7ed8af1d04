//! What decides about access to a season: the role of an account in its club and its player.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::club_role::ClubRole;
use league::ids::{AccountId, CatalogueId};
use league::keys::SeasonKey;
use league::season::{SeasonState, Visibility};
use uuid::Uuid;

use crate::clubs::parse_role;
use crate::keys::of_season;
use crate::players::{Player, PlayerColumns};
use crate::schema::{memberships, players, seasons};
use crate::seasons::{parse_state, parse_visibility};
use crate::{Conn, StoreError};

/// One account in one season, without the season's rules.
#[derive(Clone, Debug)]
pub struct SeasonAccess {
    /// Who may look at the season.
    pub visibility: Visibility,
    pub state: SeasonState,
    pub catalogue: CatalogueId,
    /// The account's role in the club, if it has one.
    pub role: Option<ClubRole>,
    /// The account's place among the players, if it has one.
    pub player: Option<Player>,
}

type Columns = (String, String, Uuid, Option<String>, Option<PlayerColumns>);

/// # Errors
/// [`StoreError::NotFound`] without such a season, or an error of the database.
pub async fn find(
    mut conn: &Conn,
    season: SeasonKey,
    account: AccountId,
) -> Result<SeasonAccess, StoreError> {
    let member = memberships::club_id
        .eq(season.club.0)
        .and(memberships::account_id.eq(account.0));
    let playing = of_season!(players, season).and(players::account_id.eq(account.0));
    let (visible, stands, catalogue, text, player): Columns = seasons::table
        .left_join(memberships::table.on(member))
        .left_join(players::table.on(playing))
        .filter(of_season!(seasons, season))
        .select((
            seasons::visibility,
            seasons::state,
            seasons::catalogue_id,
            memberships::role.nullable(),
            Option::<PlayerColumns>::as_select(),
        ))
        .first(&mut conn)
        .await?;
    Ok(SeasonAccess {
        visibility: parse_visibility(&visible)?,
        state: parse_state(&stands)?,
        catalogue: CatalogueId(catalogue),
        role: text.map(|text| parse_role(&text)).transpose()?,
        player: player.map(Player::try_from).transpose()?,
    })
}
