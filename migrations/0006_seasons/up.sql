create table seasons (
    club_id uuid not null,
    season_id uuid not null,
    name text not null,
    visibility text not null,
    zone text not null,
    state text not null,
    catalogue_id uuid not null,
    policy jsonb not null,
    places smallint,
    -- Rises in every transaction that changes what a reader may see.
    version bigint not null default 1,
    changed_at timestamptz not null,
    created_at timestamptz not null,
    started_at timestamptz,
    ended_at timestamptz,
    seed_commitment bytea,
    constraint seasons_pkey primary key (club_id, season_id),
    constraint seasons_club_fkey foreign key (club_id) references clubs,
    constraint seasons_catalogue_fkey foreign key (club_id, catalogue_id) references catalogues,
    constraint seasons_visibility check (visibility in ('public', 'club')),
    constraint seasons_state check (state in ('draft', 'started', 'ended')),
    constraint seasons_started check ((state = 'draft') = (started_at is null)),
    constraint seasons_committed check ((started_at is null) = (seed_commitment is null))
);

-- Apart from seasons, so that no query for a season can ever carry the secret along.
create table season_seeds (
    club_id uuid not null,
    season_id uuid not null,
    seed bytea not null,
    constraint season_seeds_pkey primary key (club_id, season_id),
    constraint season_seeds_season_fkey foreign key (club_id, season_id) references seasons
);

create table weeks (
    club_id uuid not null,
    season_id uuid not null,
    week_no smallint not null,
    cap integer not null,
    announce timestamp not null,
    lists_due timestamp not null,
    play_until timestamp not null,
    announce_at timestamptz not null,
    lists_due_at timestamptz not null,
    play_until_at timestamptz not null,
    grace_minutes integer not null,
    catalogue_number integer not null,
    sheet jsonb,
    title_reveal text not null default 'announcement',
    title_reveal_at timestamptz,
    full_reveal text not null default 'announcement',
    full_reveal_at timestamptz,
    lists_opened_at timestamptz,
    paired_at timestamptz,
    closed_at timestamptz,
    constraint weeks_pkey primary key (club_id, season_id, week_no),
    constraint weeks_season_fkey foreign key (club_id, season_id) references seasons,
    constraint weeks_week_no check (week_no between 1 and 52),
    constraint weeks_cap check (cap > 0),
    constraint weeks_order check (announce_at < lists_due_at and lists_due_at < play_until_at),
    constraint weeks_grace check (grace_minutes between 0 and 1440),
    constraint weeks_title_reveal check (title_reveal in ('announcement', 'at', 'lists_opened')),
    constraint weeks_title_reveal_at check ((title_reveal = 'at') = (title_reveal_at is not null)),
    constraint weeks_full_reveal check (full_reveal in ('announcement', 'at', 'lists_opened')),
    constraint weeks_full_reveal_at check ((full_reveal = 'at') = (full_reveal_at is not null)),
    constraint weeks_closed_after_opening check (closed_at is null or lists_opened_at is not null)
);
create index weeks_waiting_to_open on weeks (lists_due_at) where lists_opened_at is null;

create table nights (
    club_id uuid not null,
    season_id uuid not null,
    week_no smallint not null,
    night text not null,
    begins timestamp not null,
    begins_at timestamptz not null,
    tables smallint not null,
    constraint nights_pkey primary key (club_id, season_id, week_no, night),
    constraint nights_week_fkey foreign key (club_id, season_id, week_no) references weeks on delete cascade,
    constraint nights_tables check (tables between 1 and 500)
);

create table players (
    club_id uuid not null,
    season_id uuid not null,
    player_id uuid not null,
    account_id uuid not null,
    handle text not null,
    faction text not null,
    household text,
    nights text[] not null,
    joined_week smallint not null,
    left_after_week smallint,
    joined_at timestamptz not null,
    constraint players_pkey primary key (club_id, season_id, player_id),
    constraint players_season_fkey foreign key (club_id, season_id) references seasons,
    constraint players_account_fkey foreign key (account_id) references accounts,
    constraint players_account_taken unique (club_id, season_id, account_id),
    constraint players_handle_taken unique (club_id, season_id, handle)
);

create table availabilities (
    club_id uuid not null,
    season_id uuid not null,
    week_no smallint not null,
    player_id uuid not null,
    nights text[] not null,
    told_at timestamptz not null,
    constraint availabilities_pkey primary key (club_id, season_id, week_no, player_id),
    constraint availabilities_week_fkey foreign key (club_id, season_id, week_no) references weeks,
    constraint availabilities_player_fkey foreign key (club_id, season_id, player_id) references players
);
