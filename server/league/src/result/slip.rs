//! The result slip: reported, then confirmed or disputed, then ruled if need be. Every transition
//! is a plain decision on facts; none loses a report.

use chrono::TimeDelta;
use messages::{Message, result_faults as said};

use crate::ids::{AccountId, RulingId};
use crate::name::Text;
use crate::side::{PerSide, Side};
use crate::time::Instant;

use super::Outcome;

/// What one side says happened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ResultReport {
    pub by: Side,
    pub outcome: Outcome,
    pub at: Instant,
}

/// Why a slip is disputed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dispute {
    /// The objection in words; `None` where only a different report arrived.
    pub reason: Option<Text>,
    /// What the other side says instead, where it says so.
    pub counter: Option<ResultReport>,
    pub by: Side,
    pub at: Instant,
}

/// How a result came to stand without a ruling.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confirmation {
    /// The other side confirmed or reported the same.
    ByOpponent,
    /// Nobody objected in the season's time.
    BySilence,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ruling {
    /// Its identity, named in the ledger.
    pub id: RulingId,
    pub referee: AccountId,
    pub outcome: Outcome,
    pub reason: Text,
    pub at: Instant,
}

/// The state of a slip.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Slip {
    /// Nobody has reported.
    Awaited,
    /// One side has; silence confirms at `confirm_due`.
    Reported {
        report: ResultReport,
        /// When silence confirms.
        confirm_due: Instant,
    },
    /// Two sides disagree: nothing counts until a ruling.
    Disputed {
        /// What was reported first.
        report: ResultReport,
        /// What speaks against it.
        dispute: Dispute,
    },
    /// It stands.
    Confirmed {
        /// What was reported first.
        report: ResultReport,
        /// How it was confirmed.
        how: Confirmation,
        at: Instant,
    },
    /// A referee decided. A later ruling takes its place under a new version.
    Ruled(Ruling),
}

/// Why an act on a slip is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SlipRefusal {
    /// Nothing was reported yet.
    NotReported,
    /// A side cannot confirm or dispute its own report.
    OwnReport,
    /// Only a ruling changes it now.
    Final,
    /// The report was answered in between, by the other side, by silence or by a referee.
    Answered,
    /// Two reports stand against each other; a referee decides.
    Disputed,
    /// Nobody rules on a game of their own.
    OwnGame,
}

impl SlipRefusal {
    pub fn message(&self) -> Message {
        match self {
            Self::NotReported => said::slip_fault_not_reported(),
            Self::OwnReport => said::slip_fault_own_report(),
            Self::Final => said::slip_fault_final(),
            Self::Answered => said::slip_fault_answered(),
            Self::Disputed => said::slip_fault_disputed(),
            Self::OwnGame => said::slip_fault_own_game(),
        }
    }
}

impl SlipRefusal {
    pub const fn code(self) -> &'static str {
        match self {
            Self::NotReported => "result.not-reported",
            Self::OwnReport => "result.own-report",
            Self::Final => "result.final",
            Self::Answered => "result.answered",
            Self::Disputed => "result.disputed",
            Self::OwnGame => "result.own-game",
        }
    }
}

/// What counts for the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SettledResult<'s> {
    /// The outcome that stands.
    pub outcome: &'s Outcome,
    /// The ruling behind it, if one was needed.
    pub ruling: Option<RulingId>,
}

impl Slip {
    /// Takes in a report. The first opens the slip; a further one of the same side corrects it and
    /// starts the time anew; one of the other side confirms it when it agrees and disputes it when
    /// it does not.
    ///
    /// # Errors
    /// [`SlipRefusal::Final`] or [`SlipRefusal::Disputed`] once reports no longer decide.
    pub fn report(
        self,
        report: ResultReport,
        confirm_within: TimeDelta,
    ) -> Result<Self, SlipRefusal> {
        match self {
            Self::Awaited => Ok(Self::reported(report, confirm_within)),
            Self::Reported { report: first, .. } if first.by == report.by => {
                Ok(Self::reported(report, confirm_within))
            }
            Self::Reported { report: first, .. } if first.outcome.agrees_with(&report.outcome) => {
                Ok(Self::Confirmed {
                    report: first,
                    how: Confirmation::ByOpponent,
                    at: report.at,
                })
            }
            Self::Reported { report: first, .. } => Ok(Self::Disputed {
                report: first,
                dispute: Dispute {
                    reason: None,
                    by: report.by,
                    at: report.at,
                    counter: Some(report),
                },
            }),
            Self::Disputed { .. } => Err(SlipRefusal::Disputed),
            Self::Confirmed { .. } | Self::Ruled(_) => Err(SlipRefusal::Final),
        }
    }

    fn reported(report: ResultReport, confirm_within: TimeDelta) -> Self {
        let confirm_due = report.at + confirm_within;
        Self::Reported {
            report,
            confirm_due,
        }
    }

    /// Whether the report that awaits an answer is the one made at this instant: its side may report
    /// anew until it is answered, and nobody agrees to numbers that they have not seen.
    pub fn awaits_answer_to(&self, reported_at: Instant) -> bool {
        matches!(self, Self::Reported { report, .. } if report.at == reported_at)
    }

    /// The other side agrees.
    ///
    /// # Errors
    /// [`SlipRefusal`] unless a report of the other side awaits an answer.
    pub fn confirm(self, by: Side, at: Instant) -> Result<Self, SlipRefusal> {
        let report = self.awaiting_answer_of(by)?;
        Ok(Self::Confirmed {
            report,
            how: Confirmation::ByOpponent,
            at,
        })
    }

    /// The other side objects with a reason.
    ///
    /// # Errors
    /// [`SlipRefusal`] unless a report of the other side awaits an answer.
    pub fn dispute(
        self,
        by: Side,
        reason: Text,
        counter: Option<Outcome>,
        at: Instant,
    ) -> Result<Self, SlipRefusal> {
        let report = self.awaiting_answer_of(by)?;
        Ok(Self::Disputed {
            report,
            dispute: Dispute {
                reason: Some(reason),
                counter: counter.map(|outcome| ResultReport { by, outcome, at }),
                by,
                at,
            },
        })
    }

    fn awaiting_answer_of(self, by: Side) -> Result<ResultReport, SlipRefusal> {
        match self {
            Self::Awaited => Err(SlipRefusal::NotReported),
            Self::Reported { report, .. } if report.by == by => Err(SlipRefusal::OwnReport),
            Self::Reported { report, .. } => Ok(report),
            Self::Disputed { .. } => Err(SlipRefusal::Disputed),
            Self::Confirmed { .. } | Self::Ruled(_) => Err(SlipRefusal::Answered),
        }
    }

    /// What silence has made of the slip by `now`.
    pub fn settle(self, now: Instant) -> Self {
        match self {
            Self::Reported {
                report,
                confirm_due,
            } if confirm_due <= now => Self::Confirmed {
                report,
                how: Confirmation::BySilence,
                at: confirm_due,
            },
            other => other,
        }
    }

    /// A referee decides, whatever the state: also before any report, and again after an earlier
    /// ruling.
    ///
    /// # Errors
    /// [`SlipRefusal::OwnGame`] when the referee is one of `players`.
    pub fn rule(self, ruling: Ruling, players: PerSide<AccountId>) -> Result<Self, SlipRefusal> {
        match players.side_of(&ruling.referee) {
            Some(_) => Err(SlipRefusal::OwnGame),
            None => Ok(Self::Ruled(ruling)),
        }
    }

    /// What counts for the table; nothing while the slip is open or disputed.
    pub fn settled(&self) -> Option<SettledResult<'_>> {
        match self {
            Self::Confirmed { report, .. } => Some(SettledResult {
                outcome: &report.outcome,
                ruling: None,
            }),
            Self::Ruled(ruling) => Some(SettledResult {
                outcome: &ruling.outcome,
                ruling: Some(ruling.id),
            }),
            Self::Awaited | Self::Reported { .. } | Self::Disputed { .. } => None,
        }
    }
}

#[cfg(test)]
mod tests;
