//! The schema goes forward and back.

use std::thread;

use crate::harness::{Database, RUNTIME, Server};
use crate::sources::files;

/// Everything a migration can make, in words that two schemas can be compared by.
const SCHEMA: &str = "
    SELECT 'column ' || table_name || '.' || column_name || ' ' || data_type || ' '
        || is_nullable || ' ' || coalesce(column_default, '')
    FROM information_schema.columns WHERE table_schema = 'public'
    UNION ALL SELECT 'packed ' || attrelid::regclass || '.' || attname || ' ' || attcompression::text
    FROM pg_attribute JOIN pg_class ON pg_class.oid = attrelid
    WHERE relnamespace = 'public'::regnamespace AND attcompression::text <> ''
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
    RUNTIME.block_on(store::revert_migrations(&url)).unwrap();
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

/// Each column with what a query that was written before relies on.
const COLUMNS: &str = "
    SELECT table_name || '.' || column_name || ' ' || udt_name || ' ' || is_nullable || ' '
        || (column_default IS NOT NULL)::text
    FROM information_schema.columns WHERE table_schema = 'public' ORDER BY 1";

/// What may refuse a row that was good before, with the columns that it looks at.
const REFUSALS: &str = "
    SELECT conrelid::regclass || ' ' || coalesce(string_agg(attname, ',' ORDER BY attname), '') || ' '
        || conname
    FROM pg_constraint LEFT JOIN pg_attribute ON attrelid = conrelid AND attnum = ANY (conkey)
    WHERE connamespace = 'public'::regnamespace GROUP BY conrelid, conname
    UNION ALL SELECT tgrelid::regclass || '  ' || tgname FROM pg_trigger WHERE NOT tgisinternal
    ORDER BY 1";

/// While servers are replaced, old ones run over the new schema. Their queries name their columns, so
/// they go on working if every column they know is still there in its type, no new one must be filled,
/// and nothing new refuses what they write.
#[test]
fn each_migration_leaves_the_queries_of_the_server_before_it_working() {
    let database = Database::empty();
    for up in files("migrations", "up.sql") {
        let (columns, refusals) = (database.texts(COLUMNS), database.texts(REFUSALS));
        database.run(&up.text);
        let now = database.texts(COLUMNS);
        for column in &columns {
            assert!(now.contains(column), "{} takes away {column}", up.path);
        }
        let known = |table: &str| columns.iter().any(|column| table_of(column) == table);
        let fresh: Vec<&String> = now
            .iter()
            .filter(|column| !columns.contains(column))
            .collect();
        for column in fresh.iter().filter(|column| known(table_of(column))) {
            let may_be_left_out = column.ends_with(" YES false") || column.ends_with(" true");
            assert!(may_be_left_out, "{} asks for {column}", up.path);
        }
        let fresh: Vec<&str> = fresh.iter().map(|column| column_of(column)).collect();
        for refusal in database.texts(REFUSALS) {
            let mut words = refusal.split(' ');
            let (table, looks_at) = (words.next().unwrap(), words.next().unwrap());
            let of_new_columns = looks_at
                .split(',')
                .any(|column| fresh.contains(&format!("{table}.{column}").as_str()));
            assert!(
                refusals.contains(&refusal) || !known(table) || of_new_columns,
                "{} refuses by {refusal}",
                up.path
            );
        }
    }
}

fn table_of(column: &str) -> &str {
    column.split('.').next().unwrap()
}

/// `table.column`.
fn column_of(column: &str) -> &str {
    column.split(' ').next().unwrap()
}
