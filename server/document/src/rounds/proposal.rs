//! A pairing proposal with its proof and its reasons as JSON.

use league::ids::PlayerId;
use league::pairing::{
    AlternativeCost, Barrier, Cost, Game, Level, LookAhead, Pair, PairingReason, Proposal, Subject,
    TableNo,
};
use league::points::LeaguePoints;
use messages::Message;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::rounds::certificate::CertificateDocument;
use crate::rounds::task::{WishDocument, night_key, pair, uuids};

/// The best pairing for a round.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProposalDocument {
    /// Games, by night and table.
    pub games: Vec<GameDocument>,
    /// Who sits out.
    pub byes: Vec<Uuid>,
    /// What the pairing gives up, most important level first.
    pub cost: Vec<LevelAmountDocument>,
    /// What it would give up if the hall had tables without end.
    pub cost_without_hall: Vec<LevelAmountDocument>,
    /// Proof that no pairing gives up less.
    pub certificate: CertificateDocument,
    /// One reason for each game in the same order, then one for each bye.
    pub reasons: Vec<ReasonDocument>,
    /// Why players meet again, where they must.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub barrier: Option<BarrierDocument>,
    /// How far the rounds to come were considered.
    pub looked_ahead: LookedAheadDocument,
}

/// One game of a round.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GameDocument {
    /// Number of the night.
    pub night: u8,
    /// Number of the table.
    pub table: u16,
    /// Who attacks, where the scenario has roles.
    pub attacker: Uuid,
    /// Who defends.
    pub defender: Uuid,
}

/// An amount given up on one level.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LevelAmountDocument {
    /// What is counted.
    pub level: LevelDocument,
    /// How much.
    pub amount: u64,
}

/// What a cost counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum LevelDocument {
    /// Players without a game.
    SittingOut,
    /// Games that differ from the published round.
    Changed,
    /// A wish of the season.
    Wish {
        /// Which.
        wish: WishDocument,
    },
    /// The seeded draw.
    Draw,
}

/// Why one game, or one bye, stands in the proposal.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReasonDocument {
    /// What is explained.
    pub subject: SubjectDocument,
    /// Wishes it gives up.
    pub given_up: Vec<GivenUpDocument>,
    /// What the best proposal without it would cost.
    pub price: PriceDocument,
}

/// A wish that a game or a bye gives up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GivenUpDocument {
    /// Which.
    pub wish: WishDocument,
    /// How much.
    pub amount: u64,
}

/// What a reason explains.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum SubjectDocument {
    /// Two players of one score group meet.
    SameScore {
        /// Who.
        players: [Uuid; 2],
        /// Their score.
        score: i32,
    },
    /// Two players of different scores meet.
    Float {
        /// The higher score.
        down: Uuid,
        /// Its score.
        down_score: i32,
        /// The lower score.
        up: Uuid,
        /// Its score.
        up_score: i32,
    },
    /// A player sits out.
    Bye {
        /// Who.
        player: Uuid,
        /// Their score.
        score: i32,
    },
}

/// What it would cost to forbid a game or a bye.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum PriceDocument {
    /// The organiser fixed it.
    Pinned,
    /// It had to be: by the round robin's table, or reported before a repair.
    Fixed,
    /// There is no pairing without it.
    Indispensable,
    /// Fewer rounds to come would be playable.
    ShorterSeason,
    /// Another pairing is exactly as good.
    Nothing,
    /// Every other pairing is worse.
    Worse {
        /// The first level on which it is.
        level: LevelDocument,
        /// By how much.
        amount: u64,
    },
    /// Not computed for a field this large.
    NotAsked,
}

/// The sets of players that force a rematch.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct BarrierDocument {
    /// Players who could serve one odd set each.
    pub removed: Vec<Uuid>,
    /// Odd sets that have only those left to meet.
    pub odd_sets: Vec<Vec<Uuid>>,
    /// Games that must be rematches, at least.
    pub rematches: u32,
}

/// How far the rounds to come were considered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum LookedAheadDocument {
    /// This is the last round.
    LastRound,
    /// Every round left can be played without a rematch.
    Playable {
        /// One way to do it, round by round.
        rounds: Vec<Vec<[Uuid; 2]>>,
    },
    /// Every round left can be played whatever happens.
    NeverRunsDry,
    /// Only so many further rounds avoid a rematch.
    RunsDry {
        /// One way to play them, round by round.
        rounds: Vec<Vec<[Uuid; 2]>>,
    },
    /// Only this round was considered.
    OneRound,
}

impl From<&Proposal> for ProposalDocument {
    fn from(proposal: &Proposal) -> Self {
        Self {
            games: proposal.games.iter().map(GameDocument::from).collect(),
            byes: ids(&proposal.byes),
            cost: amounts(&proposal.cost),
            cost_without_hall: amounts(&proposal.cost_without_hall),
            certificate: CertificateDocument::from(&proposal.certificate),
            reasons: proposal.reasons.iter().map(ReasonDocument::from).collect(),
            barrier: proposal.barrier.as_ref().map(BarrierDocument::from),
            looked_ahead: LookedAheadDocument::from(&proposal.look_ahead),
        }
    }
}

impl ProposalDocument {
    /// The proposal, for example to verify it again.
    ///
    /// # Errors
    /// What is malformed: a night that cannot be, a player paired with themselves, a number that is
    /// none.
    pub fn to_proposal(&self) -> Result<Proposal, Message> {
        Ok(Proposal {
            games: self
                .games
                .iter()
                .map(GameDocument::to_game)
                .collect::<Result<_, _>>()?,
            byes: players(&self.byes),
            cost: cost(&self.cost),
            cost_without_hall: cost(&self.cost_without_hall),
            certificate: self.certificate.to_certificate()?,
            reasons: self
                .reasons
                .iter()
                .map(ReasonDocument::to_reason)
                .collect::<Result<_, _>>()?,
            barrier: self.barrier.as_ref().map(BarrierDocument::to_barrier),
            look_ahead: self.looked_ahead.to_looked_ahead()?,
        })
    }
}

impl From<&Game> for GameDocument {
    fn from(game: &Game) -> Self {
        Self {
            night: game.night.number(),
            table: game.table.0,
            attacker: game.attacker.0,
            defender: game.defender.0,
        }
    }
}

impl GameDocument {
    /// The game.
    ///
    /// # Errors
    /// A night that cannot be.
    pub fn to_game(&self) -> Result<Game, Message> {
        Ok(Game {
            night: night_key(self.night)?,
            table: TableNo(self.table),
            attacker: PlayerId(self.attacker),
            defender: PlayerId(self.defender),
        })
    }
}

impl From<Level> for LevelDocument {
    fn from(level: Level) -> Self {
        match level {
            Level::SittingOut => Self::SittingOut,
            Level::Changed => Self::Changed,
            Level::Wish(wish) => Self::Wish { wish: wish.into() },
            Level::Draw => Self::Draw,
        }
    }
}

impl From<LevelDocument> for Level {
    fn from(level: LevelDocument) -> Self {
        match level {
            LevelDocument::SittingOut => Self::SittingOut,
            LevelDocument::Changed => Self::Changed,
            LevelDocument::Wish { wish } => Self::Wish(wish.into()),
            LevelDocument::Draw => Self::Draw,
        }
    }
}

impl From<&PairingReason> for ReasonDocument {
    fn from(reason: &PairingReason) -> Self {
        let given_up = reason.given_up.iter();
        Self {
            subject: reason.subject.into(),
            given_up: given_up
                .map(|&(wish, amount)| GivenUpDocument {
                    wish: wish.into(),
                    amount,
                })
                .collect(),
            price: reason.alternative.into(),
        }
    }
}

impl ReasonDocument {
    fn to_reason(&self) -> Result<PairingReason, Message> {
        let given_up = self
            .given_up
            .iter()
            .map(|given| (given.wish.into(), given.amount));
        Ok(PairingReason {
            subject: self.subject.to_subject()?,
            given_up: given_up.collect(),
            alternative: self.price.into(),
        })
    }
}

impl From<Subject> for SubjectDocument {
    fn from(subject: Subject) -> Self {
        match subject {
            Subject::SameScore { pair, score } => Self::SameScore {
                players: uuids(pair),
                score: score.get(),
            },
            Subject::Float {
                down,
                down_score,
                up,
                up_score,
            } => Self::Float {
                down: down.0,
                down_score: down_score.get(),
                up: up.0,
                up_score: up_score.get(),
            },
            Subject::Bye { player, score } => Self::Bye {
                player: player.0,
                score: score.get(),
            },
        }
    }
}

impl SubjectDocument {
    fn to_subject(self) -> Result<Subject, Message> {
        Ok(match self {
            Self::SameScore { players, score } => Subject::SameScore {
                pair: pair(players)?,
                score: LeaguePoints::new(score),
            },
            Self::Float {
                down,
                down_score,
                up,
                up_score,
            } => Subject::Float {
                down: PlayerId(down),
                down_score: LeaguePoints::new(down_score),
                up: PlayerId(up),
                up_score: LeaguePoints::new(up_score),
            },
            Self::Bye { player, score } => Subject::Bye {
                player: PlayerId(player),
                score: LeaguePoints::new(score),
            },
        })
    }
}

impl From<AlternativeCost> for PriceDocument {
    fn from(price: AlternativeCost) -> Self {
        match price {
            AlternativeCost::Pinned => Self::Pinned,
            AlternativeCost::Fixed => Self::Fixed,
            AlternativeCost::Indispensable => Self::Indispensable,
            AlternativeCost::ShorterSeason => Self::ShorterSeason,
            AlternativeCost::EquallyGood => Self::Nothing,
            AlternativeCost::Worse(level, amount) => Self::Worse {
                level: level.into(),
                amount,
            },
            AlternativeCost::NotComputed => Self::NotAsked,
        }
    }
}

impl From<PriceDocument> for AlternativeCost {
    fn from(price: PriceDocument) -> Self {
        match price {
            PriceDocument::Pinned => Self::Pinned,
            PriceDocument::Fixed => Self::Fixed,
            PriceDocument::Indispensable => Self::Indispensable,
            PriceDocument::ShorterSeason => Self::ShorterSeason,
            PriceDocument::Nothing => Self::EquallyGood,
            PriceDocument::Worse { level, amount } => Self::Worse(level.into(), amount),
            PriceDocument::NotAsked => Self::NotComputed,
        }
    }
}

impl From<&Barrier> for BarrierDocument {
    fn from(barrier: &Barrier) -> Self {
        Self {
            removed: ids(&barrier.removed),
            odd_sets: barrier.odd_sets.iter().map(|set| ids(set)).collect(),
            rematches: barrier.rematches,
        }
    }
}

impl BarrierDocument {
    fn to_barrier(&self) -> Barrier {
        Barrier {
            removed: players(&self.removed),
            odd_sets: self.odd_sets.iter().map(|set| players(set)).collect(),
            rematches: self.rematches,
        }
    }
}

impl From<&LookAhead> for LookedAheadDocument {
    fn from(looked: &LookAhead) -> Self {
        let rounds = |plan: &[Vec<Pair>]| -> Vec<Vec<[Uuid; 2]>> {
            plan.iter()
                .map(|round| round.iter().copied().map(uuids).collect())
                .collect()
        };
        match looked {
            LookAhead::LastRound => Self::LastRound,
            LookAhead::Playable(plan) => Self::Playable {
                rounds: rounds(plan),
            },
            LookAhead::NeverRunsDry => Self::NeverRunsDry,
            LookAhead::RunsDry(plan) => Self::RunsDry {
                rounds: rounds(plan),
            },
            LookAhead::OneRound => Self::OneRound,
        }
    }
}

impl LookedAheadDocument {
    fn to_looked_ahead(&self) -> Result<LookAhead, Message> {
        let plan = |rounds: &[Vec<[Uuid; 2]>]| -> Result<Vec<Vec<Pair>>, Message> {
            rounds
                .iter()
                .map(|round| round.iter().copied().map(pair).collect())
                .collect()
        };
        Ok(match self {
            Self::LastRound => LookAhead::LastRound,
            Self::Playable { rounds } => LookAhead::Playable(plan(rounds)?),
            Self::NeverRunsDry => LookAhead::NeverRunsDry,
            Self::RunsDry { rounds } => LookAhead::RunsDry(plan(rounds)?),
            Self::OneRound => LookAhead::OneRound,
        })
    }
}

fn amounts(cost: &Cost) -> Vec<LevelAmountDocument> {
    let levels = cost.0.iter();
    levels
        .map(|&(level, amount)| LevelAmountDocument {
            level: level.into(),
            amount,
        })
        .collect()
}

fn cost(amounts: &[LevelAmountDocument]) -> Cost {
    Cost(
        amounts
            .iter()
            .map(|counted| (counted.level.into(), counted.amount))
            .collect(),
    )
}

fn ids(players: &[PlayerId]) -> Vec<Uuid> {
    players.iter().map(|player| player.0).collect()
}

fn players(ids: &[Uuid]) -> Vec<PlayerId> {
    ids.iter().copied().map(PlayerId).collect()
}
