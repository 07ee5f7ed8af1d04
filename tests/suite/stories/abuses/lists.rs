//! Leave to hand in late.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::super::lists::{DEADLINE, opened};
use crate::harness::{Answer, List, Player, Stage};

fn grant(stage: &Stage, player: &Player) -> Answer<()> {
    let week = stage.week(1);
    week.grant_late_leave(player, "Power cut in Mill Lane")
}

#[test]
fn leave_replaces_no_list_counts_once_and_ends_with_the_draw() {
    let stage = Stage::draft();
    let people = ["Oskrel", "Corvanel", "Lumeth", "Pellamoor"];
    let [oskrel, corvanel, lumeth, pellamoor] = people.map(|handle| stage.join(handle));
    stage.start();
    let seal = |player: &Player, list: &List| stage.week(1).list_of(player).seal(list);
    seal(&oskrel, &List::demo("Oskrel", 1)).expect(201);
    stage.clock().show(DEADLINE);
    stage.week(1).open_lists().expect(204);

    grant(&stage, &oskrel).expect(204);
    let other = List::demo("Oskrel", 1).without_last_entry();
    seal(&oskrel, &other).refused(409, "list-locked");
    grant(&stage, &corvanel).expect(204);
    let first = List::demo("Corvanel", 1);
    let late = seal(&corvanel, &first).expect(201);
    let second = first.without_last_entry();
    seal(&corvanel, &second).refused(409, "list-locked");

    grant(&stage, &lumeth).expect(204);
    let round = stage.week(1).propose().expect(201);
    assert!(
        round.inputs.receipts.contains(&late.digest),
        "drawn from late lists, too"
    );
    seal(&lumeth, &List::demo("Lumeth", 1)).refused(409, "list-locked");
    grant(&stage, &pellamoor).refused(409, "week-state");
}

/// Nobody plays against it, so nobody reads it; whoever withdraws after the opening takes nothing back.
#[test]
fn a_list_stays_sealed_whose_player_withdrew_before_the_opening() {
    let stage = Stage::draft();
    let people = ["Oskrel", "Corvanel", "Lumeth", "Pellamoor"];
    let players @ [oskrel, corvanel, lumeth, pellamoor] = &people.map(|handle| stage.join(handle));
    stage.start();
    let week = stage.week(1);
    for (player, handle) in players.iter().zip(people) {
        let list = List::demo(handle, 1);
        week.list_of(player).seal(&list).expect(201);
    }
    week.by(corvanel).claim("tally-novice-1", 1).expect(201);
    let withdraw = |player: &Player| {
        let place = stage.season.player(&player.id).by(player);
        place.withdraw().expect(200);
    };
    withdraw(corvanel);
    stage.clock().show(DEADLINE);
    week.open_lists().expect(204);
    withdraw(lumeth);

    let told: BTreeSet<&str> = [oskrel, lumeth, pellamoor]
        .map(|player| player.id.as_str())
        .into();
    let lists = opened(&stage, 1).lists;
    let listed: BTreeSet<&str> = lists.iter().map(|list| list.player.as_str()).collect();
    assert_eq!(listed, told);
    let seen = stage.season.by(stage.visitor());
    let trail = seen.trail().expect(200);
    let opening = trail.iter().find(|entry| entry.act == "open_lists");
    assert_eq!(players_of(opening.unwrap().fact("receipts")), told);
    let export = seen.export().expect(200);
    assert_eq!(players_of(export.pointer("/weeks/0/lists").unwrap()), told);
    assert_eq!(export.get("painting"), Some(&json!([])));
    let page = seen.player(&corvanel.id).page("");
    let page = stage.visitor().get(&page).text();
    assert!(
        page.contains("A list is shown here once all lists of its week are opened."),
        "{page}"
    );
    assert!(seen.claims().expect(200).is_empty());

    let own = week.list_of(corvanel).own().expect(200);
    assert_eq!(own.sealed.unwrap().list, List::demo("Corvanel", 1));
}

fn players_of(lists: &Value) -> BTreeSet<&str> {
    let lists = lists.as_array().unwrap().iter();
    lists.map(|list| list["player"].as_str().unwrap()).collect()
}
