create table rounds (
    club_id uuid not null,
    season_id uuid not null,
    round_id uuid not null,
    week_no smallint not null,
    round_no smallint not null,
    state text not null,
    task jsonb not null,
    proposal jsonb not null,
    draw bytea not null,
    proposed_by uuid not null,
    proposed_at timestamptz not null,
    published_by uuid,
    published_at timestamptz,
    constraint rounds_pkey primary key (club_id, season_id, round_id),
    constraint rounds_week_fkey foreign key (club_id, season_id, week_no) references weeks,
    constraint rounds_state check (state in ('proposed', 'published')),
    constraint rounds_published check ((state = 'published') = (published_at is not null)),
    constraint rounds_number_taken unique (club_id, season_id, week_no, round_no)
);

create table games (
    club_id uuid not null,
    season_id uuid not null,
    game_id uuid not null,
    round_id uuid not null,
    week_no smallint not null,
    round_no smallint not null,
    first uuid not null,
    -- Absent for a bye. Of two, the first attacks where the scenario has roles.
    second uuid,
    night text,
    table_no smallint,
    constraint games_pkey primary key (club_id, season_id, game_id),
    constraint games_round_fkey foreign key (club_id, season_id, round_id) references rounds,
    constraint games_first_fkey foreign key (club_id, season_id, first) references players,
    constraint games_second_fkey foreign key (club_id, season_id, second) references players,
    constraint games_two_people check (first <> second),
    constraint games_placed check ((second is null) = (table_no is null) and (second is null) = (night is null)),
    constraint games_first_once unique (club_id, season_id, week_no, round_no, first),
    constraint games_second_once unique (club_id, season_id, week_no, round_no, second)
);
