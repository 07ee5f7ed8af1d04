-- Who did what, when and why. Each entry carries the digest of the one before it, so that an entry
-- changed, dropped or moved later is found by recomputing the chain of its club.
create table trail (
    club_id uuid not null,
    entry_no bigint not null,
    season_id uuid,
    happened_at timestamptz not null,
    actor uuid,
    act text not null,
    facts jsonb not null,
    open_to text not null,
    previous bytea not null,
    digest bytea not null,
    constraint trail_pkey primary key (club_id, entry_no),
    constraint trail_club_fkey foreign key (club_id) references clubs,
    constraint trail_open_to check (open_to in ('everyone', 'officers'))
);
create index trail_season on trail (club_id, season_id, entry_no);

create table trail_heads (
    club_id uuid not null,
    entry_no bigint not null,
    digest bytea not null,
    constraint trail_heads_pkey primary key (club_id),
    constraint trail_heads_club_fkey foreign key (club_id) references clubs
);

create function trail_is_for_ever() returns trigger language plpgsql as $$
begin
    raise exception 'the trail is append-only' using errcode = 'restrict_violation';
end
$$;
create trigger trail_is_for_ever before update or delete on trail
    for each row execute function trail_is_for_ever();
