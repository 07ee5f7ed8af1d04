-- What a player says of a unit, and whether somebody has looked at it.
create table painting_claims (
    club_id uuid not null,
    season_id uuid not null,
    claim_id uuid not null,
    player_id uuid not null,
    week_no smallint not null,
    unit text not null,
    stages jsonb not null,
    photo bytea,
    claimed_at timestamptz not null,
    state text not null,
    checker text,
    decided_by uuid,
    decided_at timestamptz,
    reason text,
    constraint painting_claims_pkey primary key (club_id, season_id, claim_id),
    constraint painting_claims_player_fkey
        foreign key (club_id, season_id, player_id) references players,
    constraint painting_claims_week_fkey
        foreign key (club_id, season_id, week_no) references weeks,
    constraint painting_claims_state check (state in ('open', 'verified', 'refused')),
    constraint painting_claims_checker check ((state = 'verified') = (checker is not null)),
    constraint painting_claims_decided check ((state = 'open') = (decided_at is null)),
    constraint painting_claims_reason check ((state = 'refused') = (reason is not null))
);
create index painting_claims_player on painting_claims (club_id, season_id, player_id, claimed_at);
