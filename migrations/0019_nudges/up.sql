-- When those who run a season reminded everybody who owed something. Whom it concerns follows from
-- the facts whenever it is asked; nothing here says who had handed in.
create table nudges (
    club_id uuid not null,
    season_id uuid not null,
    week_no smallint not null,
    about text not null,
    nudged_by uuid not null,
    nudged_at timestamptz not null,
    constraint nudges_pkey primary key (club_id, season_id, week_no, about, nudged_at),
    constraint nudges_week_fkey foreign key (club_id, season_id, week_no) references weeks,
    constraint nudges_about check (about in ('lists', 'results'))
);
