-- A game's slip: one row for each game, so that two reports at once meet at its lock.
create table slips (
    club_id uuid not null,
    season_id uuid not null,
    game_id uuid not null,
    contents jsonb not null,
    state text not null,
    -- Rises when a result that stood is changed by a ruling.
    version integer not null default 1,
    confirm_due_at timestamptz,
    constraint slips_pkey primary key (club_id, season_id, game_id),
    constraint slips_game_fkey foreign key (club_id, season_id, game_id) references games,
    constraint slips_state check (state in ('awaited', 'reported', 'disputed', 'confirmed', 'ruled')),
    constraint slips_confirm_due check ((state = 'reported') = (confirm_due_at is not null))
);
create index slips_waiting on slips (confirm_due_at) where state = 'reported';

-- Lines that a ruling adds to the ledger by itself: a penalty, an award, a correction.
create table adjustments (
    club_id uuid not null,
    season_id uuid not null,
    ruling_id uuid not null,
    player_id uuid not null,
    week_no smallint not null,
    amount integer not null,
    reason text not null,
    made_by uuid not null,
    made_at timestamptz not null,
    constraint adjustments_pkey primary key (club_id, season_id, ruling_id),
    constraint adjustments_player_fkey foreign key (club_id, season_id, player_id) references players,
    constraint adjustments_amount check (amount between -1000 and 1000 and amount <> 0)
);
