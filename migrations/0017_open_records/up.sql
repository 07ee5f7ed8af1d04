-- Members who agree that everybody reads their record over the club's public seasons. Whoever takes
-- it back and agrees again gets another address; whoever leaves the club takes it back.
create table open_records (
    club_id uuid not null,
    account_id uuid not null,
    record_id uuid not null,
    agreed_at timestamptz not null,
    constraint open_records_pkey primary key (club_id, account_id),
    constraint open_records_member_fkey
        foreign key (club_id, account_id) references memberships on delete cascade,
    constraint open_records_record_taken unique (club_id, record_id)
);

-- The seasons that somebody played in.
create index players_account on players (club_id, account_id);

-- The directory of what everybody may see, newest first.
create index seasons_directory on seasons (started_at desc, season_id desc)
    where visibility = 'public' and state <> 'draft';
