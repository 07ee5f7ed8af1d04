-- Pictures of models, decoded and written anew by us: no file as it was sent is ever kept.
create table painting_photos (
    club_id uuid not null,
    season_id uuid not null,
    player_id uuid not null,
    -- SHA-256 of the pixels as they were sent, which is also the picture's name.
    digest bytea not null,
    -- Which pictures look alike: 64 bits that differ little.
    likeness bigint not null,
    jpeg bytea not null,
    uploaded_at timestamptz not null,
    constraint painting_photos_pkey primary key (club_id, season_id, digest, player_id),
    constraint painting_photos_player_fkey
        foreign key (club_id, season_id, player_id) references players,
    constraint painting_photos_digest check (octet_length(digest) = 32),
    constraint painting_photos_jpeg check (octet_length(jpeg) between 1 and 10485760)
);
