//! A round travels through JSON and comes back as the same round.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use document::rounds::proposal::ProposalDocument;
use document::rounds::task::TaskDocument;
use league::ids::PlayerId;
use league::name::Name;
use league::pairing::round::draw::DrawSecret;
use league::pairing::{
    Contender, Draw, Float, Household, Meeting, Night, NightKey, NightSet, Pair, RoleHistory,
    TableNo, Task, Wishes, propose,
};
use league::points::LeaguePoints;
use league::side::GameRole;
use league::week::WeekNo;
use uuid::Uuid;

fn task() -> Task {
    let player = |at: u32| PlayerId(Uuid::from_u128(u128::from(at) + 7));
    let contenders = (0..9).map(|at| Contender {
        player: player(at),
        score: LeaguePoints::new(i32::try_from(at / 2).unwrap()),
        nights: NightSet::from_bits([1, 3, 2][at as usize % 3]),
        household: (at < 2).then_some(Household(5)),
        club: None,
        faction: Name::new(["Vesper Orrery", "Sodwether Moot"][at as usize % 2]).ok(),
        byes: u8::from(at == 3),
        spare: at == 4,
        floats: [
            (at == 5).then_some(Float::Down),
            (at == 6).then_some(Float::Up),
        ],
        roles: RoleHistory {
            attacker: 1,
            defender: 1,
            streak: Some((GameRole::Defender, 1)),
        },
        tables: vec![TableNo(2), TableNo(1)],
    });
    let night = |number, tables: &[u16]| Night {
        key: NightKey::new(number).unwrap(),
        tables: tables.iter().copied().map(TableNo).collect(),
    };
    Task {
        week: WeekNo::new(3).unwrap(),
        contenders: contenders.collect(),
        history: vec![Meeting {
            pair: Pair::new(player(2), player(3)).unwrap(),
            week: WeekNo::FIRST,
        }],
        nights: vec![night(0, &[1, 2]), night(1, &[3, 1])],
        wishes: Wishes::default(),
        pins: vec![Pair::new(player(7), player(8)).unwrap()],
        forbidden: vec![Pair::new(player(5), player(6)).unwrap()],
        fixed: Vec::new(),
        allowed: None,
        published: Vec::new(),
        rounds_left: 3,
        draw: Draw([0; 32]),
    }
}

#[test]
fn a_round_is_reproduced_from_its_locked_inputs_and_the_revealed_secret() {
    let secret = DrawSecret::new([42; 32]);
    let locked = TaskDocument::from_task(&task(), vec!["ab".into(), "01".into()]);
    let drawn = locked
        .to_task(secret.draw(locked.digest().unwrap()))
        .unwrap();
    let proposal = propose(&drawn).unwrap();
    let published = serde_json::to_string(&ProposalDocument::from(&proposal)).unwrap();
    let kept = serde_json::to_string(&locked).unwrap();

    let inputs: TaskDocument = serde_json::from_str(&kept).unwrap();
    let again = inputs
        .to_task(secret.draw(inputs.digest().unwrap()))
        .unwrap();
    assert_eq!(propose(&again).as_ref(), Ok(&proposal));
    let read: ProposalDocument = serde_json::from_str(&published).unwrap();
    let read = read.to_proposal().unwrap();
    assert_eq!(read, proposal);
    assert_eq!(league::pairing::verify(&again, &read), Ok(()));
}

#[test]
fn the_digest_depends_on_every_receipt_and_on_no_order() {
    let digest = |task: &Task, receipts: &[&str]| {
        let receipts = receipts.iter().map(|text| text.to_string()).collect();
        TaskDocument::from_task(task, receipts).digest().unwrap()
    };
    let mut reversed = task();
    reversed.contenders.reverse();
    reversed.nights.reverse();
    assert_eq!(digest(&task(), &["a", "b"]), digest(&reversed, &["b", "a"]));
    assert_ne!(digest(&task(), &["a", "b"]), digest(&task(), &["a", "c"]));
}

#[test]
fn all_faults_of_the_inputs_are_told_with_their_places() {
    let mut locked = TaskDocument::from_task(&task(), Vec::new());
    locked.week = 0;
    locked.nights[1].night = 8;
    locked.pins = vec![[Uuid::nil(); 2]];
    locked.wishes.order.push(locked.wishes.order[0]);
    let faults = locked.to_task(Draw([0; 32])).unwrap_err();
    let pointers: Vec<&str> = faults.iter().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(pointers, ["/week", "/wishes/order", "/nights/1", "/pins/0"]);
}
