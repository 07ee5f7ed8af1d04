-- The rights of the role `standings`, under which processes of the standings read. Run it as the owner
-- of the tables after every migration; it may be run again at any time.
--
-- The role reads what public seasons show: no seed, no account, no session, no draft, no list that is
-- still sealed, nothing of a draft season or of one for the club alone. It writes nothing.

do $$
begin
    if not exists (select from pg_roles where rolname = 'standings') then
        create role standings login;
    end if;
end
$$;

revoke all on all tables in schema public from standings;
grant usage on schema public to standings;
grant select on seasons, weeks, nights, players, availabilities, games, slips, adjustments,
    painting_claims, brought_units, catalogue_versions, frozen_tables, open_records, clubs to standings;
grant select (club_id, season_id, week_no, player_id, sealed, catalogue_number, sealed_at, late_minutes)
    on lists to standings;

-- The owner of a table is above its policies; they hold for the role alone.
alter table seasons enable row level security;
drop policy if exists public_seasons on seasons;
create policy public_seasons on seasons for select to standings
    using (visibility = 'public' and state <> 'draft');

do $$
declare
    name text;
begin
    foreach name in array array['weeks', 'nights', 'players', 'availabilities', 'games', 'slips',
        'adjustments', 'painting_claims', 'brought_units', 'frozen_tables']
    loop
        execute format('alter table %I enable row level security', name);
        execute format('drop policy if exists public_seasons on %I', name);
        execute format('create policy public_seasons on %1$I for select to standings using (exists (
            select from seasons where seasons.club_id = %1$I.club_id
            and seasons.season_id = %1$I.season_id))', name);
    end loop;
end
$$;

alter table lists enable row level security;
drop policy if exists opened_lists on lists;
create policy opened_lists on lists for select to standings
    using (exists (select from weeks where weeks.club_id = lists.club_id
        and weeks.season_id = lists.season_id and weeks.week_no = lists.week_no
        and weeks.lists_opened_at is not null));
