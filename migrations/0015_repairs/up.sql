-- A round that was published is never drawn again: a repair is a further version of it.
alter table rounds add column version smallint not null default 1;
-- Which version it repairs, and why; the first repairs nothing.
alter table rounds add column repair jsonb;
alter table rounds add constraint rounds_version check (version between 1 and 99);
alter table rounds add constraint rounds_repair check ((version = 1) = (repair is null));
alter table rounds drop constraint rounds_number_taken;
alter table rounds add constraint rounds_version_taken
    unique (club_id, season_id, week_no, round_no, version);
