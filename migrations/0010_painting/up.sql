-- What a player says of a unit, and whether somebody has looked at it. The newest entry counts.
create table painting_log (
    club_id uuid not null,
    season_id uuid not null,
    entry_no bigint generated always as identity,
    player_id uuid not null,
    week_no smallint not null,
    unit text not null,
    progress jsonb not null,
    claimed_at timestamptz not null,
    state text not null,
    checked_by uuid,
    checked_at timestamptz,
    reason text,
    constraint painting_log_pkey primary key (club_id, season_id, entry_no),
    constraint painting_log_player_fkey foreign key (club_id, season_id, player_id) references players,
    constraint painting_log_state check (state in ('claimed', 'verified', 'refused')),
    constraint painting_log_checked check ((state = 'claimed') = (checked_at is null))
);
create index painting_log_player on painting_log (club_id, season_id, player_id, entry_no);
