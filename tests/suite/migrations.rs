//! The schema goes forward and back.

use std::thread;

use crate::harness::{Database, RUNTIME, Server};
use crate::sources::files;

/// Everything a migration can make, in words that two schemas can be compared by.
const SCHEMA: &str = "
    SELECT 'column ' || table_name || '.' || column_name || ' ' || data_type || ' '
        || is_nullable || ' ' || coalesce(column_default, '')
    FROM information_schema.columns WHERE table_schema = 'public'
    UNION ALL SELECT 'constraint ' || conrelid::regclass || '.' || conname || ' '
        || pg_get_constraintdef(oid)
    FROM pg_constraint WHERE connamespace = 'public'::regnamespace
    UNION ALL SELECT 'index ' || indexdef FROM pg_indexes WHERE schemaname = 'public'
    UNION ALL SELECT 'function ' || pg_get_functiondef(oid)
    FROM pg_proc WHERE pronamespace = 'public'::regnamespace
    UNION ALL SELECT 'trigger ' || pg_get_triggerdef(oid) FROM pg_trigger WHERE NOT tgisinternal
    UNION ALL SELECT 'type ' || typname FROM pg_type
    WHERE typnamespace = 'public'::regnamespace AND typtype IN ('e', 'd')
    ORDER BY 1";

#[test]
fn each_migration_has_a_way_back_to_the_schema_it_found() {
    let database = Database::empty();
    let ups = files("migrations", "up.sql");
    let downs = files("migrations", "down.sql");
    assert_eq!(ups.len(), downs.len());
    for (up, down) in ups.iter().zip(&downs) {
        let before = database.texts(SCHEMA);
        database.run(&up.text);
        assert_ne!(
            database.texts(SCHEMA),
            before,
            "{} changes nothing",
            up.path
        );
        database.run(&down.text);
        assert_eq!(database.texts(SCHEMA), before, "{}", down.path);
        database.run(&up.text);
    }
}

#[test]
fn the_whole_schema_goes_back_and_forward() {
    let database = Database::empty();
    let url = database.url();
    RUNTIME.block_on(store::migrate(&url)).unwrap();
    let whole = database.texts(SCHEMA);
    RUNTIME.block_on(store::unmigrate(&url)).unwrap();
    let rest = database.texts(SCHEMA);
    assert!(
        rest.iter()
            .all(|line| line.contains("__diesel_schema_migrations")),
        "{rest:?}"
    );
    RUNTIME.block_on(store::migrate(&url)).unwrap();
    assert_eq!(database.texts(SCHEMA), whole);
}

#[test]
fn a_schema_that_is_the_newest_is_left_alone() {
    let database = Database::create();
    let before = database.texts(SCHEMA);
    RUNTIME.block_on(store::migrate(&database.url())).unwrap();
    assert_eq!(database.texts(SCHEMA), before);
}

#[test]
fn servers_that_start_at_once_migrate_one_after_the_other() {
    let database = Database::empty();
    thread::scope(|scope| {
        for _ in 0..4 {
            scope.spawn(|| drop(Server::start(&database)));
        }
    });
}
