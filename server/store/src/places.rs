//! What somebody is to a season: their role in its club and their place among its players.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::{AccountId, CatalogueId, ClubId, SeasonId};
use league::role::Role;
use league::season::{SeasonState, Visibility};
use uuid::Uuid;

use crate::clubs::role;
use crate::players::{Player, PlayerRow};
use crate::schema::{memberships, players, seasons};
use crate::seasons::{state, visibility};
use crate::{Conn, Fault};

/// One account in one season, without the season's rules.
#[derive(Clone, Debug)]
pub struct Place {
    /// Who may look at the season.
    pub visibility: Visibility,
    /// Where it stands.
    pub state: SeasonState,
    /// Its catalogue.
    pub catalogue: CatalogueId,
    /// The account's role in the club, if it has one.
    pub role: Option<Role>,
    /// The account's place among the players, if it has one.
    pub player: Option<Player>,
}

type Row = (String, String, Uuid, Option<String>, Option<PlayerRow>);

/// # Errors
/// [`Fault::NotFound`] without such a season, or a fault of the database.
pub async fn find(
    mut conn: &Conn,
    club: ClubId,
    season: SeasonId,
    account: AccountId,
) -> Result<Place, Fault> {
    let member = memberships::club_id
        .eq(club.0)
        .and(memberships::account_id.eq(account.0));
    let playing = players::club_id
        .eq(club.0)
        .and(players::season_id.eq(season.0))
        .and(players::account_id.eq(account.0));
    let (visible, stands, catalogue, text, player): Row = seasons::table
        .left_join(memberships::table.on(member))
        .left_join(players::table.on(playing))
        .filter(seasons::club_id.eq(club.0))
        .filter(seasons::season_id.eq(season.0))
        .select((
            seasons::visibility,
            seasons::state,
            seasons::catalogue_id,
            memberships::role.nullable(),
            Option::<PlayerRow>::as_select(),
        ))
        .first(&mut conn)
        .await?;
    Ok(Place {
        visibility: visibility(&visible)?,
        state: state(&stands)?,
        catalogue: CatalogueId(catalogue),
        role: text.map(|text| role(&text)).transpose()?,
        player: player.map(Player::try_from).transpose()?,
    })
}
