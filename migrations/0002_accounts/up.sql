create table accounts (
    account_id uuid not null,
    email text not null,
    name text not null,
    password_hash text not null,
    minor boolean not null,
    guardian_consent boolean not null,
    registered_at timestamptz not null,
    constraint accounts_pkey primary key (account_id),
    constraint accounts_email_taken unique (email),
    constraint accounts_minor_has_guardian check (not minor or guardian_consent)
);

create table sign_in_failures (
    email_digest bytea not null,
    failures integer not null,
    window_from timestamptz not null,
    constraint sign_in_failures_pkey primary key (email_digest)
);

create table sessions (
    session_id uuid not null,
    account_id uuid not null,
    started_at timestamptz not null,
    ends_at timestamptz not null,
    ended_at timestamptz,
    constraint sessions_pkey primary key (session_id),
    constraint sessions_account_fkey foreign key (account_id) references accounts on delete cascade
);
create index sessions_account on sessions (account_id);

create table refresh_tokens (
    token_digest bytea not null,
    session_id uuid not null,
    issued_at timestamptz not null,
    expires_at timestamptz not null,
    spent_at timestamptz,
    constraint refresh_tokens_pkey primary key (token_digest),
    constraint refresh_tokens_session_fkey foreign key (session_id) references sessions on delete cascade
);
create index refresh_tokens_session on refresh_tokens (session_id);
