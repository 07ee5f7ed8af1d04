//! The rules of claims, one test each.

use uuid::Uuid;

use super::super::{
    Checker, ClaimRefusal, ClaimState, Evidence, FirstPainted, ModelStages, NewClaim,
    PaintCounting, Painting, PaintingClaim, PaintingLog, PaintingTerms, PhotoDigest, Stage,
    UnitRecord, accept_claim,
};
use crate::club_role::ClubRole;
use crate::ids::{AccountId, ClaimId, PlayerId};
use crate::lists::EntryKey;
use crate::name::Text;
use crate::points::Points;
use crate::time::Instant;
use crate::week::WeekNo;

const OWNER: AccountId = AccountId(Uuid::from_u128(1));
const OTHER: AccountId = AccountId(Uuid::from_u128(2));
const PHOTO: PhotoDigest = PhotoDigest([7; 32]);

fn painting(checked_by: &[Checker]) -> Painting {
    Painting::build(PaintingTerms {
        painted_from: Stage::Finished,
        counting: PaintCounting::ByModel,
        bonuses: Vec::new(),
        checked_by: checked_by.to_vec(),
    })
    .unwrap()
}

fn hands_and_eyes() -> Painting {
    painting(&[Checker::Opponent, Checker::Referee, Checker::Photo])
}

fn unit() -> EntryKey {
    EntryKey::new("pole-hands-1").unwrap()
}

fn made(number: u128, week: u8, stages: [u32; 4], evidence: Evidence) -> NewClaim {
    NewClaim {
        id: ClaimId(Uuid::from_u128(number)),
        player: PlayerId(Uuid::from_u128(9)),
        week: WeekNo::new(week).unwrap(),
        unit: unit(),
        stages: ModelStages::new(stages).unwrap(),
        evidence,
        at: Instant::UNIX_EPOCH,
    }
}

fn verified(number: u128, week: u8, stages: [u32; 4]) -> PaintingClaim {
    let made = made(number, week, stages, Evidence::AtTable);
    let claim = accept_claim(&hands_and_eyes(), None, |_| None, made).unwrap();
    let at = Instant::UNIX_EPOCH;
    claim
        .verify(&hands_and_eyes(), Checker::Opponent, OTHER, OWNER, at)
        .unwrap()
}

fn record(painting: &Painting, claims: &[PaintingClaim]) -> Option<UnitRecord> {
    let log = PaintingLog {
        claims: claims.to_vec(),
        ..PaintingLog::default()
    };
    log.record_of(painting, &unit())
}

fn refuse(claim: PaintingClaim) -> Result<PaintingClaim, ClaimRefusal> {
    refuse_as(Checker::Referee, claim)
}

fn refuse_as(checker: Checker, claim: PaintingClaim) -> Result<PaintingClaim, ClaimRefusal> {
    let reason = Text::new("two colours, the season asks for three").unwrap();
    claim.refuse(checker, OTHER, OWNER, reason, Instant::UNIX_EPOCH)
}

#[test]
fn a_painted_unit_stays_painted_and_is_new_once() {
    let painting = hands_and_eyes();
    let claims = [verified(1, 2, [0, 0, 0, 8]), verified(2, 4, [0, 0, 0, 10])];
    let record = record(&painting, &claims).unwrap();
    assert_eq!(record.painted_in, WeekNo::new(2).map(FirstPainted::In));
    let again = made(3, 5, [0, 0, 0, 10], Evidence::AtTable);
    let refused = accept_claim(&painting, Some(&record), |_| None, again);
    assert_eq!(refused, Err(ClaimRefusal::NothingNew));
    let back = made(4, 5, [0, 0, 1, 9], Evidence::AtTable);
    let refused = accept_claim(&painting, Some(&record), |_| None, back);
    assert_eq!(refused, Err(ClaimRefusal::GoesBack));
}

#[test]
fn a_unit_may_grow_by_bare_models_and_only_the_old_ones_are_painted() {
    let painting = hands_and_eyes();
    let claims = [verified(1, 2, [0, 0, 0, 8]), verified(2, 3, [4, 0, 0, 8])];
    let record = record(&painting, &claims).unwrap();
    let on_list = painting.on_list(Points::new(96), 12, Some(&record));
    assert_eq!((on_list.models, on_list.painted), (12, 8));
}

#[test]
fn only_checked_claims_count_and_a_check_taken_back_counts_no_more() {
    let painting = hands_and_eyes();
    let open = made(1, 1, [0, 0, 0, 8], Evidence::AtTable);
    let open = accept_claim(&painting, None, |_| None, open).unwrap();
    assert_eq!(record(&painting, &[open]), None);
    let taken_back = refuse(verified(1, 1, [0, 0, 0, 8])).unwrap();
    assert!(matches!(taken_back.state, ClaimState::Refused { .. }));
    assert_eq!(refuse(taken_back.clone()), Err(ClaimRefusal::Decided));
    assert_eq!(record(&painting, &[taken_back]), None);
}

#[test]
fn the_opponents_word_is_given_once_and_a_referee_takes_it_back() {
    let claim = verified(1, 1, [0, 0, 0, 8]);
    let opponent = refuse_as(Checker::Opponent, claim.clone());
    assert_eq!(opponent, Err(ClaimRefusal::Decided));
    assert!(refuse_as(Checker::Referee, claim).is_ok());
    let open = made(1, 1, [0, 0, 0, 8], Evidence::AtTable);
    let open = accept_claim(&hands_and_eyes(), None, |_| None, open).unwrap();
    assert!(refuse_as(Checker::Opponent, open).is_ok());
}

#[test]
fn the_opponent_of_the_week_and_officers_check_claims() {
    let photo = Evidence::Photo(PHOTO);
    for role in ClubRole::ALL {
        let opponent = Checker::find(role, true, photo);
        assert_eq!(opponent, Some(Checker::Opponent), "{role:?}");
    }
    let referee = |evidence| Checker::find(ClubRole::Referee, false, evidence);
    assert_eq!(referee(Evidence::AtTable), Some(Checker::Referee));
    assert_eq!(referee(photo), Some(Checker::Photo));
    assert_eq!(Checker::find(ClubRole::Player, false, photo), None);
}

#[test]
fn nobody_checks_a_claim_of_their_own_and_only_as_the_season_says() {
    let by_hand = painting(&[Checker::Opponent]);
    let open = made(1, 1, [0, 0, 0, 8], Evidence::AtTable);
    let open = accept_claim(&by_hand, None, |_| None, open).unwrap();
    let at = Instant::UNIX_EPOCH;
    let own = open
        .clone()
        .verify(&by_hand, Checker::Opponent, OWNER, OWNER, at);
    assert_eq!(own, Err(ClaimRefusal::OwnClaim));
    let referee = open
        .clone()
        .verify(&by_hand, Checker::Referee, OTHER, OWNER, at);
    assert_eq!(referee, Err(ClaimRefusal::NotAccepted(Checker::Referee)));
    let unseen = open.verify(&hands_and_eyes(), Checker::Photo, OTHER, OWNER, at);
    assert_eq!(unseen, Err(ClaimRefusal::NoPhoto));
}

#[test]
fn a_photo_that_was_used_is_noticed_and_one_that_the_season_does_not_take_is_refused() {
    let earlier = ClaimId(Uuid::from_u128(5));
    let seen = |digest| (digest == PHOTO).then_some(earlier);
    let with_photo = || made(6, 1, [0, 0, 0, 8], Evidence::Photo(PHOTO));
    let refused = accept_claim(&hands_and_eyes(), None, seen, with_photo());
    assert_eq!(refused, Err(ClaimRefusal::PhotoUsed(earlier)));
    let refused = accept_claim(
        &painting(&[Checker::Opponent]),
        None,
        |_| None,
        with_photo(),
    );
    assert_eq!(refused, Err(ClaimRefusal::NotAccepted(Checker::Photo)));
}
