-- What players bring into a season from the one before it: their units and the paint on them.
create table brought_units (
    club_id uuid not null,
    season_id uuid not null,
    player_id uuid not null,
    units jsonb not null,
    constraint brought_units_pkey primary key (club_id, season_id, player_id),
    constraint brought_units_player_fkey
        foreign key (club_id, season_id, player_id) references players
);
