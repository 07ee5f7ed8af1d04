//! Transactions that collide: begun again while nobody was told anything, and not for ever.

use std::thread;

use crate::harness::{Player, Stage};

const WRITERS: i32 = 12;

#[test]
fn many_who_write_into_one_season_at_once_are_each_acknowledged_once_though_their_transactions_collide()
 {
    let (stage, player) = started();
    for writer in 1..=WRITERS {
        collide(&stage, writer, 2);
    }
    thread::scope(|scope| {
        for writer in 1..=WRITERS {
            let (season, player) = (&stage.season, &player);
            scope.spawn(move || season.adjust(&player.id, 1, writer, "Swept").expect(200));
        }
    });
    let kept = "SELECT amount::text FROM adjustments ORDER BY adjustments.amount";
    let each_once: Vec<String> = (1..=WRITERS).map(|amount| amount.to_string()).collect();
    assert_eq!(stage.database.texts(kept), each_once);
}

#[test]
fn a_collision_without_an_end_is_refused_for_the_moment_after_a_few_attempts() {
    let (stage, player) = started();
    collide(&stage, 1, 1_000);
    let answer = stage.season.adjust(&player.id, 1, 1, "Swept");
    assert_eq!(answer.header("retry-after"), Some("1"));
    answer.refused(503, "unavailable");
    let attempts = stage
        .database
        .texts("SELECT last_value::text FROM collisions_1");
    let attempts: u32 = attempts[0].parse().unwrap();
    assert!((2..10).contains(&attempts), "{attempts}");
    assert!(
        stage
            .database
            .texts("SELECT reason FROM adjustments")
            .is_empty()
    );
}

fn started() -> (Stage, Player) {
    let stage = Stage::draft();
    let player = stage.join("Oskrel");
    stage.start();
    stage.database.run(
        "CREATE FUNCTION collide() RETURNS trigger LANGUAGE plpgsql AS $$
            DECLARE
                attempt bigint := nextval(('collisions_' || NEW.amount)::regclass);
            BEGIN
                IF attempt > (SELECT collisions FROM colliding WHERE amount = NEW.amount) THEN
                    RETURN NEW;
                ELSIF attempt % 2 = 0 THEN
                    RAISE EXCEPTION 'deadlock detected' USING ERRCODE = '40P01';
                END IF;
                RAISE EXCEPTION 'could not serialize access due to concurrent update'
                    USING ERRCODE = '40001';
            END $$;
        CREATE TABLE colliding (amount integer, collisions bigint);
        CREATE TRIGGER collide BEFORE INSERT ON adjustments FOR EACH ROW EXECUTE FUNCTION collide()",
    );
    (stage, player)
}

/// The first attempts to give so many points collide with others: a sequence counts them, because it
/// alone outlives what is rolled back.
fn collide(stage: &Stage, amount: i32, times: u32) {
    stage.database.run(&format!(
        "CREATE SEQUENCE collisions_{amount};
        INSERT INTO colliding VALUES ({amount}, {times})"
    ));
}
