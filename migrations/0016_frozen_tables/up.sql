-- The table of a week as it was when the week was closed, and again after each act that changed it
-- later. A row never changes.
create table frozen_tables (
    club_id uuid not null,
    season_id uuid not null,
    week_no smallint not null,
    -- The season's version that the table came with.
    version bigint not null,
    act text not null,
    contents jsonb not null,
    frozen_at timestamptz not null,
    constraint frozen_tables_pkey primary key (club_id, season_id, week_no, version),
    constraint frozen_tables_week_fkey foreign key (club_id, season_id, week_no) references weeks
);

create function frozen_tables_are_for_ever() returns trigger language plpgsql as $$
begin
    raise exception 'a frozen table never changes' using errcode = 'restrict_violation';
end
$$;
create trigger frozen_tables_are_for_ever before update or delete on frozen_tables
    for each row execute function frozen_tables_are_for_ever();
