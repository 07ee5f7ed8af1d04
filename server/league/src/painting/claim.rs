//! Claims of painted models and how they are checked.

use messages::{Message, Value, painting_faults, painting_rules};

use crate::club_role::ClubRole;
use crate::ids::{AccountId, ClaimId, PlayerId};
use crate::lists::EntryKey;
use crate::name::Text;
use crate::time::Instant;
use crate::week::WeekNo;

use super::Painting;
use super::stage::ModelStages;

/// SHA-256 of the decoded pixels of a photo: the same picture saved anew has the same digest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PhotoDigest(pub [u8; 32]);

/// Who may check a claim.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Checker {
    /// The opponent of that week, at the table.
    Opponent,
    /// A referee, with the models in hand.
    Referee,
    /// A referee, by a photo.
    Photo,
}

impl Checker {
    /// The part in which somebody checks a claim: whoever played against the claiming player that week does
    /// so as the opponent, an officer by what the player offers. `None` for anybody else.
    pub fn find(role: ClubRole, is_opponent: bool, evidence: Evidence) -> Option<Self> {
        match (role, evidence) {
            _ if is_opponent => Some(Self::Opponent),
            (ClubRole::Player, _) => None,
            (ClubRole::Owner | ClubRole::Organiser | ClubRole::Referee, Evidence::AtTable) => {
                Some(Self::Referee)
            }
            (ClubRole::Owner | ClubRole::Organiser | ClubRole::Referee, Evidence::Photo(_)) => {
                Some(Self::Photo)
            }
        }
    }

    pub(super) fn message(self) -> Message {
        match self {
            Self::Opponent => painting_rules::painting_rule_opponent(),
            Self::Referee => painting_rules::painting_rule_referee(),
            Self::Photo => painting_rules::painting_rule_photo(),
        }
    }
}

/// The key of a choice that a text makes.
impl From<Checker> for Value {
    fn from(checker: Checker) -> Self {
        match checker {
            Checker::Opponent => "opponent".into(),
            Checker::Referee => "referee".into(),
            Checker::Photo => "photo".into(),
        }
    }
}

/// What the player offers as proof.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Evidence {
    /// The models, at the table.
    AtTable,
    Photo(PhotoDigest),
}

/// What stands in the log for one unit: only what was checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnitRecord {
    /// The unit of the player's collection, the same in every week's list.
    pub unit: EntryKey,
    /// How far its models are.
    pub stages: ModelStages,
    /// When all of it was first painted.
    pub painted_in: Option<FirstPainted>,
}

/// When all of a unit was first painted: new once, and painted ever after.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FirstPainted {
    /// It was brought into the season like that.
    BeforeTheSeason,
    /// In this week of the season.
    In(WeekNo),
}

/// A claim as the player makes it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewClaim {
    pub id: ClaimId,
    pub player: PlayerId,
    /// The week it is for.
    pub week: WeekNo,
    /// The unit of the player's collection, the same in every week's list.
    pub unit: EntryKey,
    /// How far its models are, by the claim.
    pub stages: ModelStages,
    pub evidence: Evidence,
    pub at: Instant,
}

/// A claim and what became of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaintingClaim {
    /// As made.
    pub made: NewClaim,
    pub state: ClaimState,
}

/// Where a claim stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ClaimState {
    /// Nobody has looked.
    Open,
    /// Someone has, and agrees.
    Verified {
        /// In which part.
        checker: Checker,
        by: AccountId,
        at: Instant,
    },
    /// Someone has, and does not; or it was taken back after it had been verified.
    Refused {
        by: AccountId,
        /// Why, for the player to read.
        reason: Text,
        at: Instant,
    },
}

/// Why an act on a claim is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClaimRefusal {
    /// The log has this already.
    NothingNew,
    /// Some model would be less far than before.
    GoesBack,
    /// The photo was used for another claim.
    PhotoUsed(ClaimId),
    /// The season does not accept this proof or this checker.
    NotAccepted(Checker),
    /// A check by photo needs one.
    NoPhoto,
    /// Nobody checks a claim of their own.
    OwnClaim,
    /// It was decided already.
    Decided,
}

impl ClaimRefusal {
    pub fn message(&self) -> Message {
        match *self {
            Self::NothingNew => painting_faults::claim_fault_nothing_new(),
            Self::GoesBack => painting_faults::claim_fault_goes_back(),
            Self::PhotoUsed(_) => painting_faults::claim_fault_photo_used(),
            Self::NotAccepted(checker) => painting_faults::claim_fault_not_accepted(checker),
            Self::NoPhoto => painting_faults::claim_fault_no_photo(),
            Self::OwnClaim => painting_faults::claim_fault_own_claim(),
            Self::Decided => painting_faults::claim_fault_decided(),
        }
    }
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NothingNew => "painting.nothing-new",
            Self::GoesBack => "painting.goes-back",
            Self::PhotoUsed(_) => "painting.photo-used",
            Self::NotAccepted(_) => "painting.checker-not-accepted",
            Self::NoPhoto => "painting.no-photo",
            Self::OwnClaim => "painting.own-claim",
            Self::Decided => "painting.decided",
        }
    }
}

/// Takes in a claim against what the log shows and the photos used so far.
///
/// # Errors
/// [`ClaimRefusal`] when nothing is new, paint would come off, or the photo was seen before.
pub fn accept_claim(
    painting: &Painting,
    record: Option<&UnitRecord>,
    photo_used_by: impl Fn(PhotoDigest) -> Option<ClaimId>,
    made: NewClaim,
) -> Result<PaintingClaim, ClaimRefusal> {
    if let Some(record) = record {
        if made.stages == record.stages {
            return Err(ClaimRefusal::NothingNew);
        }
        if made.stages.goes_back_from(record.stages) {
            return Err(ClaimRefusal::GoesBack);
        }
    }
    if let Evidence::Photo(digest) = made.evidence {
        if !painting.terms().checked_by.contains(&Checker::Photo) {
            return Err(ClaimRefusal::NotAccepted(Checker::Photo));
        }
        if let Some(earlier) = photo_used_by(digest) {
            return Err(ClaimRefusal::PhotoUsed(earlier));
        }
    }
    let state = ClaimState::Open;
    Ok(PaintingClaim { made, state })
}

impl PaintingClaim {
    /// Someone looked and agrees. `owner` is the account of the claiming player.
    ///
    /// # Errors
    /// [`ClaimRefusal`] for the player's own claim, a checker the season does not accept, a photo
    /// check without photo, or a claim that was decided.
    pub fn verify(
        self,
        painting: &Painting,
        checker: Checker,
        by: AccountId,
        owner: AccountId,
        at: Instant,
    ) -> Result<Self, ClaimRefusal> {
        if self.state != ClaimState::Open {
            return Err(ClaimRefusal::Decided);
        }
        if by == owner {
            return Err(ClaimRefusal::OwnClaim);
        }
        if !painting.terms().checked_by.contains(&checker) {
            return Err(ClaimRefusal::NotAccepted(checker));
        }
        if checker == Checker::Photo && self.made.evidence == Evidence::AtTable {
            return Err(ClaimRefusal::NoPhoto);
        }
        let state = ClaimState::Verified { checker, by, at };
        Ok(Self { state, ..self })
    }

    /// Someone looked and does not agree, or a referee takes a check back: the opponent's word at the table
    /// is given once.
    ///
    /// # Errors
    /// [`ClaimRefusal`] for the player's own claim or one that was already refused, for the opponent also
    /// one that was verified.
    pub fn refuse(
        self,
        checker: Checker,
        by: AccountId,
        owner: AccountId,
        reason: Text,
        at: Instant,
    ) -> Result<Self, ClaimRefusal> {
        let is_decided = match self.state {
            ClaimState::Open => false,
            ClaimState::Verified { .. } => checker == Checker::Opponent,
            ClaimState::Refused { .. } => true,
        };
        if is_decided {
            return Err(ClaimRefusal::Decided);
        }
        if by == owner {
            return Err(ClaimRefusal::OwnClaim);
        }
        let state = ClaimState::Refused { by, reason, at };
        Ok(Self { state, ..self })
    }

    /// What the log shows for the unit with this claim: what it showed before, unless the claim is
    /// verified.
    pub(super) fn applied_to(
        &self,
        painting: &Painting,
        before: Option<UnitRecord>,
    ) -> Option<UnitRecord> {
        if !matches!(self.state, ClaimState::Verified { .. }) {
            return before;
        }
        let painted = painting.is_painted(self.made.stages);
        let now = painted.then_some(FirstPainted::In(self.made.week));
        Some(UnitRecord {
            unit: self.made.unit.clone(),
            stages: self.made.stages,
            painted_in: before.and_then(|record| record.painted_in).or(now),
        })
    }
}

#[cfg(test)]
mod tests;
