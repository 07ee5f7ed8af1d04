//! Carrying players over into the next season, with their collections if wanted. Roles belong to the
//! club and stay.

use league::catalogue::Catalogue;
use league::catalogue::key::FactionKey;
use league::club_role::ClubRole;
use league::ids::PlayerId;
use league::season::{Carry, LeftOut};
use league::time::Instant;
use league::week::WeekNo;
use store::Conn;
use store::players::Player;
use store::seasons::Season;
use store::weeks::Week;
use uuid::Uuid;

use crate::access::policy;
use crate::lists::load_collection;
use crate::{Refusal, catalogues};

/// Who came along and who did not.
#[derive(Clone, Debug, Default)]
pub struct CarriedPlayers {
    /// Their places in the new season.
    pub players: Vec<Player>,
    /// Handles in the old one.
    pub left_out: Vec<(String, LeftOut)>,
}

/// Gives everybody who may come a place from the first week on.
///
/// # Errors
/// [`Refusal::Internal`] when a stored value can no longer be read.
pub(super) async fn carry_players(
    conn: &mut Conn,
    old: &Season,
    new: &Season,
    carry: Carry,
    now: Instant,
) -> Result<CarriedPlayers, Refusal> {
    let mut carried = CarriedPlayers::default();
    if carry == Carry::Nobody {
        return Ok(carried);
    }
    let first = store::weeks::find(conn, new.key().week(WeekNo::FIRST)).await?;
    let number = first.catalogue_number;
    let catalogue = catalogues::load_catalogue(conn, new.club, new.catalogue, number).await?;
    for before in store::players::list(conn, old.key()).await? {
        let role = store::clubs::find_role(conn, new.club, before.account).await?;
        if let Some(why) = left_out(&before, role, &catalogue)? {
            carried.left_out.push((before.handle, why));
            continue;
        }
        let id = PlayerId(Uuid::new_v4());
        let player = new_player(id, &before, &first);
        store::players::create(conn, new.key(), &player, now).await?;
        if carry == Carry::PlayersWithCollections {
            carry_collection(conn, old, new, before.id, id).await?;
        }
        carried.players.push(player);
    }
    Ok(carried)
}

fn left_out(
    player: &Player,
    role: Option<ClubRole>,
    catalogue: &Catalogue,
) -> Result<Option<LeftOut>, Refusal> {
    let faction = FactionKey::new(&player.faction)
        .map_err(|_| Refusal::Internal(format!("the faction of player {}", player.id)))?;
    let known = catalogue.faction(&faction).is_some();
    Ok(LeftOut::find(
        player.left_after.is_some(),
        role.is_some(),
        known,
    ))
}

fn new_player(id: PlayerId, before: &Player, first: &Week) -> Player {
    let mut place = Player {
        id,
        joined_week: first.week,
        ..before.clone()
    };
    let known = |key: &String| first.nights.iter().any(|night| night.key == *key);
    place.nights.retain(known);
    place
}

async fn carry_collection(
    conn: &mut Conn,
    old: &Season,
    new: &Season,
    before: PlayerId,
    player: PlayerId,
) -> Result<(), Refusal> {
    let painting = policy::parse(old)?.painting;
    let (units, log) = load_collection(conn, old, before).await?;
    let brought = log.carry_over(&painting, &units, player);
    Ok(store::brought_units::create(conn, new.key(), player, &brought).await?)
}
