-- A game's slip: its primary key makes a second report of the same game impossible.
create table slips (
    club_id uuid not null,
    season_id uuid not null,
    game_id uuid not null,
    state text not null,
    outcome jsonb not null,
    reported_by uuid not null,
    reported_at timestamptz not null,
    confirm_due_at timestamptz not null,
    answered_by uuid,
    answered_at timestamptz,
    dispute_reason text,
    constraint slips_pkey primary key (club_id, season_id, game_id),
    constraint slips_game_fkey foreign key (club_id, season_id, game_id) references games,
    constraint slips_state check (state in ('reported', 'confirmed', 'disputed'))
);
create index slips_waiting on slips (confirm_due_at) where state = 'reported';

create table rulings (
    club_id uuid not null,
    season_id uuid not null,
    ruling_no bigint generated always as identity,
    game_id uuid not null,
    outcome jsonb not null,
    reason text not null,
    ruled_by uuid not null,
    ruled_at timestamptz not null,
    constraint rulings_pkey primary key (club_id, season_id, ruling_no),
    constraint rulings_game_fkey foreign key (club_id, season_id, game_id) references games
);
create index rulings_game on rulings (club_id, season_id, game_id, ruling_no);

-- Lines that a ruling adds to the ledger by itself: a penalty, an award, a correction.
create table adjustments (
    club_id uuid not null,
    season_id uuid not null,
    adjustment_no bigint generated always as identity,
    player_id uuid not null,
    week_no smallint not null,
    amount integer not null,
    reason text not null,
    made_by uuid not null,
    made_at timestamptz not null,
    constraint adjustments_pkey primary key (club_id, season_id, adjustment_no),
    constraint adjustments_player_fkey foreign key (club_id, season_id, player_id) references players,
    constraint adjustments_amount check (amount between -1000 and 1000 and amount <> 0)
);
