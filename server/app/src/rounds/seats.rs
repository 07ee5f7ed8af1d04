//! Seats of a round robin: drawn when the season starts; who joins later takes a free one.

use league::pairing::Task;
use league::pairing::history::past::RoundKey;
use league::pairing::robin::seats::{find_free_seat, table_size};
use league::pairing::robin::table_round::{
    RoundRobinFault, SeatNumbers, TablePosition, check_room, restrict_to_table,
};
use league::pairing::round::draw::DrawSecret;
use league::pairing::round::method::{Cycles, PairingMethod};
use messages::round_refusals;
use store::Conn;
use store::players::Player;
use store::seasons::Season;

use crate::access::policy;
use crate::loaded_season::LoadedSeason;
use crate::{Reason, Refusal};

/// Draws the seats, where the season is a round robin.
///
/// # Errors
/// [`Reason::SeasonFull`] for more than a table has seats, [`Reason::NoRoundPossible`] for fewer
/// rounds than the table.
pub(crate) async fn draw_seats(
    conn: &mut Conn,
    season: &Season,
    secret: &DrawSecret,
) -> Result<(), Refusal> {
    let rounds = policy::parse(season)?.rounds;
    let PairingMethod::RoundRobin(cycles) = rounds.method() else {
        return Ok(());
    };
    let key = season.key();
    let mut players = store::players::list(conn, key).await?;
    players.retain(|player| player.left_after.is_none());
    let weeks = store::weeks::list(conn, key).await?.len();
    must_fit(
        players.len(),
        cycles,
        weeks * usize::from(rounds.per_week()),
    )?;
    let lots = document::rounds::seats::seat_draw(secret, season.id.0);
    let order = players.iter().map(|player| player.id).collect();
    for (seat, drawn) in (1..).zip(document::rounds::seats::order_by_lot(&lots, order)) {
        for player in players.iter_mut().filter(|player| player.id == drawn) {
            player.seat = Some(seat);
            store::players::update(conn, key, player).await?;
        }
    }
    Ok(())
}

fn must_fit(players: usize, cycles: Cycles, rounds: usize) -> Result<(), Refusal> {
    check_room(players, cycles, rounds).map_err(|none| {
        let reason = match none {
            RoundRobinFault::Players { .. } => Reason::SeasonFull,
            RoundRobinFault::Rounds { .. } => Reason::NoRoundPossible,
        };
        let (limit, actual) = none.limit_and_actual();
        let refusal = Refusal::rule(reason, none.message());
        refusal.fact("actual", actual).fact("limit", limit)
    })
}

/// The lowest seat without somebody, for who comes after the start; `None` where there are no seats.
///
/// # Errors
/// [`Reason::SeasonFull`] when every seat of the table is taken.
pub(crate) fn free_seat(players: &[Player]) -> Result<Option<u8>, Refusal> {
    let Some(seats) = table_size(players.iter().filter_map(|player| player.seat)) else {
        return Ok(None);
    };
    let there = players.iter().filter(|player| player.left_after.is_none());
    let taken = there.filter_map(|player| player.seat).collect();
    find_free_seat(seats, &taken).map(Some).ok_or_else(|| {
        let message = round_refusals::round_robin_seats(seats);
        Refusal::rule(Reason::SeasonFull, message).fact("limit", seats)
    })
}

/// Restricts the task to the games of the round robin's table; leaves it as it is where the season pairs
/// by score.
///
/// # Errors
/// [`Reason::NoRoundPossible`] when nobody has a game left; [`Refusal::Internal`] when a season was
/// started without seats.
pub(super) fn apply_round_robin(
    task: Task,
    loaded: &LoadedSeason,
    method: PairingMethod,
    key: RoundKey,
) -> Result<Task, Refusal> {
    let PairingMethod::RoundRobin(cycles) = method else {
        return Ok(task);
    };
    let before = usize::from(key.week.number() - 1) * usize::from(loaded.per_week);
    let given = loaded.players.iter().filter_map(|player| player.seat);
    let place = TablePosition {
        // Nobody has a seat: no table has none, which is an internal error below.
        seats: table_size(given).unwrap_or(0),
        cycles,
        number: before + usize::from(key.number.saturating_sub(1)),
    };
    let there = loaded
        .players
        .iter()
        .filter(|player| player.plays_in(key.week));
    let seat = |player: &Player| Some((player.id, player.seat?));
    let seats: SeatNumbers = there.filter_map(seat).collect();
    let task = restrict_to_table(task, &seats, place);
    let task = task.ok_or_else(|| Refusal::Internal("a round robin without seats".into()))?;
    match &task.allowed {
        Some(allowed) if allowed.is_empty() => Err(Refusal::rule(
            Reason::NoRoundPossible,
            round_refusals::round_robin_exhausted(),
        )),
        _ => Ok(task),
    }
}
