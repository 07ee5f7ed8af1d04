//! Authorization of a player for a game of their own, with the game locked.

use league::ids::{AccountId, PlayerId};
use league::keys::GameKey;
use league::result::SlipRefusal;
use league::side::{PerSide, Side};
use league::time::Instant;
use messages::{refusals, results};
use store::Conn;
use store::games::GameRow;
use store::seasons::Season;

use crate::access::{SeasonView, must_be_started, view_season};
use crate::{Actor, Reason, Refusal};

/// A locked game, and the side on which the actor plays it.
pub(super) struct GameSeat {
    pub season: Season,
    pub game: GameRow,
    pub players: PerSide<PlayerId>,
    pub side: Side,
    pub now: Instant,
}

/// # Errors
/// [`Refusal::NotFound`] for a game that is none of the viewer's business or a bye,
/// [`Reason::NotAParticipant`] for a spectator and for whoever left the club.
pub(super) async fn lock_own_game(
    conn: &mut Conn,
    actor: Actor,
    game: GameKey,
) -> Result<GameSeat, Refusal> {
    let view = view_season(conn, Some(actor), game.season).await?;
    must_be_started(&view.season)?;
    let game = store::games::lock(conn, game).await?;
    let now = store::clock::now(conn).await?;
    GameSeat::find(conn, actor, view, game, now).await
}

impl GameSeat {
    /// The actor's seat in a game that is locked.
    ///
    /// # Errors
    /// [`Refusal::NotFound`] for a bye, [`Reason::NotAParticipant`].
    pub async fn find(
        conn: &mut Conn,
        actor: Actor,
        view: SeasonView,
        mut game: GameRow,
        now: Instant,
    ) -> Result<Self, Refusal> {
        let SeasonView { season, role } = view;
        let players = players_of(&game)?;
        let key = season.key();
        let own = store::players::find_by_account(conn, key, actor.account).await?;
        let side = own
            .filter(|_| role.is_some())
            .and_then(|player| players.side_of(&player.id))
            .ok_or_else(|| Refusal::rule(Reason::NotAParticipant, results::participants_only()))?;
        game.slip = game.slip.settle(now);
        Ok(Self {
            season,
            game,
            players,
            side,
            now,
        })
    }
}

/// The two players of a game.
///
/// # Errors
/// [`Refusal::NotFound`] for a bye, which has no slip.
pub(super) fn players_of(game: &GameRow) -> Result<PerSide<PlayerId>, Refusal> {
    let meeting = game.meeting.as_ref().ok_or(Refusal::NotFound)?;
    Ok(PerSide {
        first: game.first,
        second: meeting.second,
    })
}

/// The accounts of the two players.
pub(super) async fn find_accounts(
    conn: &mut Conn,
    season: &Season,
    players: PerSide<PlayerId>,
) -> Result<PerSide<AccountId>, Refusal> {
    let key = season.key();
    let first = store::players::find(conn, key, players.first)
        .await?
        .account;
    let second = store::players::find(conn, key, players.second)
        .await?
        .account;
    Ok(PerSide { first, second })
}

pub(super) fn slip_refusal(why: SlipRefusal) -> Refusal {
    let reason = match why {
        SlipRefusal::NotReported | SlipRefusal::Disputed | SlipRefusal::Answered => {
            Reason::SlipStateChanged
        }
        SlipRefusal::OwnReport => Reason::SelfConfirmation,
        SlipRefusal::Final => Reason::ResultFinal,
        SlipRefusal::OwnGame => Reason::ConflictOfInterest,
    };
    Refusal::rule(reason, refusals::not_done(why.message()))
}
