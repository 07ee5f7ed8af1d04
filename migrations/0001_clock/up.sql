-- The one clock of the league. It answers the moment of the call, not of the transaction's start:
-- a transaction that waited for a lock across a deadline must see that the deadline has passed.
create function league_clock() returns timestamptz
    language sql volatile
    as 'select clock_timestamp()';
