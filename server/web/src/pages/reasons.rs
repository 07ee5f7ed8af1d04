//! Why a round is as it is: each pair's reasons, and the proof of the whole.

use app::Refusal;
use app::rounds::Round;
use league::ids::PlayerId;
use league::pairing::Draw;
use league::pairing::verify;
use uuid::Uuid;

use super::season_scene::SeasonScene;
use super::texts::Texts;

/// A game or a bye of a round, with its reasons.
pub struct ExplainedPair {
    /// Whom it is about: two players, or one who sits out.
    pub players: Vec<Uuid>,
    /// Night and table; empty for a bye.
    pub place: String,
    /// Their names.
    pub names: String,
    /// Why.
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
pub fn explained(
    scene: &SeasonScene,
    t: &Texts,
    round: &Round,
) -> Result<Vec<ExplainedPair>, Refusal> {
    let proposal = round.proposal.proposal().map_err(Refusal::Broken)?;
    let called = |player: PlayerId| scene.handle(player).to_owned();
    let reasons = proposal.reasons.iter();
    let mut reasons = reasons.map(|reason| t.speech().paired(reason, &called));
    let mut pairs = Vec::new();
    for game in &round.proposal.games {
        pairs.push(ExplainedPair {
            place: format!(
                "{}, {} {}",
                night(scene, round, game.night),
                t.table,
                game.table
            ),
            players: vec![game.attacker, game.defender],
            names: names(scene, &[game.attacker, game.defender]),
            sentences: reasons.next().unwrap_or_default(),
        });
    }
    for bye in &round.proposal.byes {
        pairs.push(ExplainedPair {
            place: String::new(),
            players: vec![*bye],
            names: names(scene, &[*bye]),
            sentences: reasons.next().unwrap_or_default(),
        });
    }
    Ok(pairs)
}

/// The names of players who meet.
pub fn names(scene: &SeasonScene, players: &[Uuid]) -> String {
    let names = players.iter().map(|player| scene.handle(PlayerId(*player)));
    names.collect::<Vec<_>>().join(" – ")
}

fn night(scene: &SeasonScene, round: &Round, number: u8) -> String {
    let week = scene.week(round.week).ok();
    let night = week.and_then(|(week, _)| week.nights.get(usize::from(number)));
    night.map(|night| night.key.clone()).unwrap_or_default()
}

/// Asks the checker, which shares nothing with the solver but the prices.
///
/// # Errors
/// As [`explained`].
pub fn proof(scene: &SeasonScene, t: &Texts, round: &Round) -> Result<Proof, Refusal> {
    let proposal = round.proposal.proposal().map_err(Refusal::Broken)?;
    let draw: Option<[u8; 32]> = round.draw.clone().try_into().ok();
    let task = draw.and_then(|draw| round.task.task(Draw(draw)).ok());
    let called = |player: PlayerId| scene.handle(player).to_owned();
    let barrier = proposal.barrier.as_ref();
    let barrier = barrier.map(|barrier| t.speech().barrier(barrier, &called));
    Ok(Proof {
        holds: task.is_some_and(|task| verify(&task, &proposal).is_ok()),
        sentences: barrier
            .into_iter()
            .chain([t.speech().looked_ahead(&proposal.looked_ahead)])
            .collect(),
    })
}
