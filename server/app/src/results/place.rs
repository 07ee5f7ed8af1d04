//! A game under the hands of one of its players.

use league::ids::{AccountId, ClubId, GameId, PlayerId, SeasonId};
use league::result::SlipRefusal;
use league::side::{Both, Side};
use league::time::Instant;
use store::Conn;
use store::games::Game;
use store::seasons::Season;

use crate::seasons::look::{Look, look, must_be_started};
use crate::{Actor, Reason, Refusal};

/// A game, locked, with the side of the player who acts.
pub(super) struct Place {
    pub season: Season,
    pub game: Game,
    pub players: Both<PlayerId>,
    pub side: Side,
    pub now: Instant,
}

/// # Errors
/// [`Refusal::NotFound`] for a game that is none of the viewer's business or a bye,
/// [`Reason::NotAParticipant`] for a spectator and for whoever left the club.
pub(super) async fn take_place(
    conn: &mut Conn,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    game: GameId,
) -> Result<Place, Refusal> {
    let Look { season, role } = look(conn, Some(actor), club, season).await?;
    must_be_started(&season)?;
    let mut game = store::games::lock(conn, club, season.id, game).await?;
    let players = both(&game)?;
    let own = store::players::find_by_account(conn, club, season.id, actor.account).await?;
    let side = own
        .filter(|_| role.is_some())
        .and_then(|player| players.side_of(&player.id))
        .ok_or_else(|| {
            Refusal::rule(
                Reason::NotAParticipant,
                "Only the two players of the game may do this.",
            )
        })?;
    let now = store::clock::now(conn).await?;
    game.slip = game.slip.settle(now);
    Ok(Place {
        season,
        game,
        players,
        side,
        now,
    })
}

/// The two players of a game.
///
/// # Errors
/// [`Refusal::NotFound`] for a bye, which has no slip.
pub(super) fn both(game: &Game) -> Result<Both<PlayerId>, Refusal> {
    let meeting = game.meeting.as_ref().ok_or(Refusal::NotFound)?;
    Ok(Both {
        first: game.first,
        second: meeting.second,
    })
}

/// The accounts of the two players.
pub(super) async fn accounts(
    conn: &mut Conn,
    season: &Season,
    players: Both<PlayerId>,
) -> Result<Both<AccountId>, Refusal> {
    let (club, id) = (season.club, season.id);
    let first = store::players::find(conn, club, id, players.first)
        .await?
        .account;
    let second = store::players::find(conn, club, id, players.second)
        .await?
        .account;
    Ok(Both { first, second })
}

pub(super) fn refuse(why: SlipRefusal) -> Refusal {
    let reason = match why {
        SlipRefusal::NotReported | SlipRefusal::Disputed | SlipRefusal::Answered => {
            Reason::SlipStateChanged
        }
        SlipRefusal::OwnReport => Reason::SelfConfirmation,
        SlipRefusal::Final => Reason::ResultFinal,
        SlipRefusal::OwnGame => Reason::ConflictOfInterest,
    };
    Refusal::rule(reason, format!("Not done: {why}."))
}
