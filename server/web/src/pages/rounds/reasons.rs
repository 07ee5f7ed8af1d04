//! The reasons of each pair and the proof of a round, in sentences.

use app::Refusal;
use app::rounds::RoundRow;
use league::ids::PlayerId;
use league::pairing::Draw;
use messages::Message;
use uuid::Uuid;

use crate::pages::season::context::SeasonContext;
use messages::Texts;

/// A game or a bye of a round, with its reasons.
pub struct ExplainedPair {
    /// Whom it is about: two players, or one who sits out.
    pub players: Vec<Uuid>,
    /// Night and table; empty for a bye.
    pub place: String,
    pub names: String,
    pub sentences: Vec<String>,
}

/// The proof of a round.
pub struct Proof {
    /// Whether the independent checker agrees, asked just now.
    pub holds: bool,
    /// What is known of forced rematches and of the rounds to come.
    pub sentences: Vec<String>,
}

/// Every game, then every bye.
///
/// # Errors
/// A round that cannot be read is a fault of ours.
pub fn explain_pairs(
    context: &SeasonContext,
    t: Texts,
    round: &RoundRow,
) -> Result<Vec<ExplainedPair>, Refusal> {
    let proposal = round.proposal.to_proposal().map_err(unreadable)?;
    let called = |player: PlayerId| context.handle(player).to_owned();
    let reasons = proposal.reasons.iter();
    let mut reasons = reasons.map(|reason| t.say_all(&reason.messages(&called)));
    let missing = || Refusal::Internal(format!("round {} lacks a reason", round.id));
    let mut pairs = Vec::new();
    for game in &round.proposal.games {
        pairs.push(ExplainedPair {
            place: format!(
                "{}, {} {}",
                night_name(context, round, game.night),
                t.table(),
                game.table
            ),
            players: vec![game.attacker, game.defender],
            names: names(context, &[game.attacker, game.defender]),
            sentences: reasons.next().ok_or_else(missing)?,
        });
    }
    for bye in &round.proposal.byes {
        pairs.push(ExplainedPair {
            place: String::new(),
            players: vec![*bye],
            names: names(context, &[*bye]),
            sentences: reasons.next().ok_or_else(missing)?,
        });
    }
    Ok(pairs)
}

/// The names of players who meet.
pub fn names(context: &SeasonContext, players: &[Uuid]) -> String {
    let names = players
        .iter()
        .map(|player| context.handle(PlayerId(*player)));
    names.collect::<Vec<_>>().join(" – ")
}

/// What the week calls one of its nights, counted from 0.
pub fn night_name(context: &SeasonContext, round: &RoundRow, number: u8) -> String {
    let week = context.week(round.week).ok();
    let night = week.and_then(|(week, _)| week.nights.get(usize::from(number)));
    // Until a round is published the week may lose the night that it was drawn for.
    night.map(|night| night.key.clone()).unwrap_or_default()
}

/// Asks the checker, which shares nothing with the solver but the prices.
///
/// # Errors
/// As [`explain_pairs`].
pub fn proof(context: &SeasonContext, t: Texts, round: &RoundRow) -> Result<Proof, Refusal> {
    let proposal = round.proposal.to_proposal().map_err(unreadable)?;
    let broken = |what: String| Refusal::Internal(format!("round {}: {what}", round.id));
    let draw = round.draw.as_slice().try_into();
    let draw = Draw(draw.map_err(|_| broken("no draw of 32 bytes".to_owned()))?);
    let task = round.task.to_task(draw);
    let task = task.map_err(|faults| broken(format!("{faults:?}")))?;
    let called = |player: PlayerId| context.handle(player).to_owned();
    let barrier = proposal.barrier.as_ref();
    let barrier = barrier.map(|barrier| t.say(&barrier.message(&called)));
    Ok(Proof {
        holds: league::pairing::verify(&task, &proposal).is_ok(),
        sentences: barrier
            .into_iter()
            .chain([t.say(&proposal.look_ahead.message())])
            .collect(),
    })
}

fn unreadable(fault: Message) -> Refusal {
    Refusal::Internal(fault.to_string())
}
