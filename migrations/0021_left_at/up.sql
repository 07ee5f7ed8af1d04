-- When somebody withdrew: a list that was sealed and not yet opened then stays sealed. Whoever withdrew
-- before this column did so after all openings that there were.
alter table players add column left_at timestamptz;
update players set left_at = league_clock() where left_after_week is not null;
