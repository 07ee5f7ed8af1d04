//! A proposal that was tampered with is caught, whatever was changed.

use league::pairing::round::certificate::{Choice, Dual, Node};
use league::pairing::{Cost, LookAhead, NightSet, Proposal, Task};
use league::pairing::{VerifyError, verify};
use league::points::LeaguePoints;

use crate::season::{night, player, proven, task};

fn honest() -> (Task, Proposal) {
    let mut task = task(9);
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        contender.score = LeaguePoints::new(at as i32 * at as i32);
    }
    let proposal = proven(&task);
    (task, proposal)
}

fn flaw(forge: impl Fn(&mut Proposal)) -> Option<VerifyError> {
    let (task, mut proposal) = honest();
    forge(&mut proposal);
    verify(&task, &proposal).err()
}

#[test]
fn every_forgery_has_its_name() {
    assert_eq!(flaw(|_| {}), None);
    assert_eq!(
        flaw(|p| p.certificate.players.truncate(8)),
        Some(VerifyError::OtherPlayers)
    );
    assert_eq!(
        flaw(|p| p.games[0].attacker = p.games[1].attacker),
        Some(VerifyError::Games)
    );
    assert_eq!(
        flaw(|p| p.games[0].table = p.games[1].table),
        Some(VerifyError::Hall)
    );
    assert_eq!(flaw(|p| p.cost = Cost(Vec::new())), Some(VerifyError::Cost));
    assert_eq!(
        flaw(|p| p.look_ahead = LookAhead::Playable(vec![Vec::new()])),
        Some(VerifyError::Plan)
    );
    for node in [
        Node::DeadEnd,
        Node::Barrier(vec![0]),
        Node::Crowded(NightSet::ALL),
        Node::Split {
            choice: Choice::Nights(0, NightSet::ALL),
            yes: 0,
            no: 0,
        },
        Node::Split {
            choice: Choice::Paired([0, 1]),
            yes: 7,
            no: 8,
        },
    ] {
        assert!(matches!(
            flaw(|p| p.certificate.tree = vec![node.clone()]),
            Some(VerifyError::Node(_))
        ));
    }
}

#[test]
fn a_worse_pairing_has_no_proof() {
    let (task, best) = honest();
    let mut swapped = best.clone();
    let (first, second) = (swapped.games[0].defender, swapped.games[1].defender);
    (swapped.games[0].defender, swapped.games[1].defender) = (second, first);
    let mut forbidden = task.clone();
    forbidden.forbidden = vec![best.games[0].pair().unwrap()];
    let other = proven(&forbidden);
    assert_eq!(verify(&task, &swapped), Err(VerifyError::Cost));
    assert!(
        verify(&task, &other).is_err(),
        "its dual breaks on the freed pair"
    );
}

#[test]
fn a_raised_potential_is_caught() {
    for place in 0..9 {
        let raised = flaw(|p| {
            let Node::Bound(dual) = &mut p.certificate.tree[0] else {
                panic!()
            };
            dual.potentials[place] += 1;
        });
        assert_eq!(raised, Some(VerifyError::Node(0)));
        let lowered = flaw(|p| {
            let Node::Bound(dual) = &mut p.certificate.tree[0] else {
                panic!()
            };
            dual.potentials[place] -= 1;
        });
        assert_eq!(lowered, Some(VerifyError::Node(0)));
    }
}

#[test]
fn a_malformed_dual_is_refused_without_harm() {
    let forge = |forge: &dyn Fn(&mut Dual)| {
        flaw(|p| {
            let Node::Bound(dual) = &mut p.certificate.tree[0] else {
                panic!()
            };
            forge(dual);
        })
    };
    let with_set = |set: &[u32], depth| forge(&|dual| dual.odd_sets.push((set.to_vec(), depth)));
    let refused = Some(VerifyError::Node(0));
    assert_eq!(forge(&|dual| dual.potentials.truncate(3)), refused);
    assert_eq!(forge(&|dual| dual.potentials.push(0)), refused);
    assert_eq!(forge(&|dual| dual.potentials[0] = i128::MAX), refused);
    assert_eq!(forge(&|dual| dual.potentials[0] = i128::MIN), refused);
    assert_eq!(with_set(&[0, 1, 99], 2), refused);
    assert_eq!(with_set(&[0, 1, 1], 2), refused);
    assert_eq!(with_set(&[0, 1], 2), refused);
    assert_eq!(with_set(&[0, 1, 2], -2), refused);
    assert_eq!(with_set(&[0, 1, 2], i128::MAX), refused);
}

#[test]
fn more_byes_than_needed_are_caught() {
    let mut few = task(6);
    few.nights = vec![night(0, 2)];
    let two_out = proven(&few);
    assert_eq!(two_out.byes.len(), 2);
    let mut many = few.clone();
    many.nights = vec![night(0, 3)];
    assert_eq!(verify(&many, &two_out), Err(VerifyError::Byes));
    assert!(
        two_out
            .byes
            .iter()
            .all(|&out| (1..=6).any(|number| player(number) == out))
    );
}
