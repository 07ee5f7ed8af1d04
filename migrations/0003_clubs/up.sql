create table clubs (
    club_id uuid not null,
    slug text not null,
    name text not null,
    founded_at timestamptz not null,
    constraint clubs_pkey primary key (club_id),
    constraint clubs_slug_taken unique (slug)
);

create table memberships (
    club_id uuid not null,
    account_id uuid not null,
    role text not null,
    since timestamptz not null,
    constraint memberships_pkey primary key (club_id, account_id),
    constraint memberships_club_fkey foreign key (club_id) references clubs,
    constraint memberships_account_fkey foreign key (account_id) references accounts,
    constraint memberships_role check (role in ('owner', 'organiser', 'referee', 'player'))
);
create index memberships_account on memberships (account_id);

create table invitations (
    club_id uuid not null,
    invitation_id uuid not null,
    code_digest bytea not null,
    role text not null,
    uses_left integer not null,
    created_by uuid not null,
    created_at timestamptz not null,
    expires_at timestamptz not null,
    constraint invitations_pkey primary key (club_id, invitation_id),
    constraint invitations_code_taken unique (code_digest),
    constraint invitations_club_fkey foreign key (club_id) references clubs,
    constraint invitations_role check (role in ('organiser', 'referee', 'player')),
    constraint invitations_uses check (uses_left >= 0)
);

create table idempotency_keys (
    account_id uuid not null,
    key text not null,
    request_digest bytea not null,
    answer jsonb not null,
    created_at timestamptz not null,
    constraint idempotency_keys_pkey primary key (account_id, key),
    constraint idempotency_keys_account_fkey foreign key (account_id) references accounts on delete cascade
);
