-- Army lists: one row for a player's week, with what is being written and what was handed in.
create table lists (
    club_id uuid not null,
    season_id uuid not null,
    week_no smallint not null,
    player_id uuid not null,
    list_id uuid not null,
    draft jsonb,
    draft_revision integer not null default 0,
    sealed jsonb,
    sealed_points integer,
    catalogue_number integer,
    salt bytea,
    digest bytea,
    sealed_at timestamptz,
    late_minutes integer,
    -- Last week's legal list, put in because none came.
    stands_in boolean not null default false,
    constraint lists_pkey primary key (club_id, season_id, week_no, player_id),
    constraint lists_week_fkey foreign key (club_id, season_id, week_no) references weeks,
    constraint lists_player_fkey foreign key (club_id, season_id, player_id) references players,
    constraint lists_sealed_whole check (
        (sealed is null) = (sealed_at is null) and (sealed is null) = (digest is null)
        and (sealed is null) = (salt is null) and (sealed is null) = (sealed_points is null)
        and (sealed is null) = (catalogue_number is null)
    )
);

create table late_leaves (
    club_id uuid not null,
    season_id uuid not null,
    week_no smallint not null,
    player_id uuid not null,
    reason text not null,
    granted_by uuid not null,
    granted_at timestamptz not null,
    constraint late_leaves_pkey primary key (club_id, season_id, week_no, player_id),
    constraint late_leaves_player_fkey foreign key (club_id, season_id, player_id) references players
);
