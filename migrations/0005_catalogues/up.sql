create table catalogues (
    club_id uuid not null,
    catalogue_id uuid not null,
    name text not null,
    created_at timestamptz not null,
    constraint catalogues_pkey primary key (club_id, catalogue_id),
    constraint catalogues_club_fkey foreign key (club_id) references clubs,
    constraint catalogues_name_taken unique (club_id, name)
);

create table catalogue_versions (
    club_id uuid not null,
    catalogue_id uuid not null,
    number integer not null,
    contents jsonb not null,
    created_by uuid not null,
    created_at timestamptz not null,
    constraint catalogue_versions_pkey primary key (club_id, catalogue_id, number),
    constraint catalogue_versions_catalogue_fkey
        foreign key (club_id, catalogue_id) references catalogues,
    constraint catalogue_versions_number check (number >= 1)
);

create function catalogue_versions_are_for_ever() returns trigger language plpgsql as $$
begin
    raise exception 'a catalogue version never changes' using errcode = 'restrict_violation';
end
$$;
create trigger catalogue_versions_are_for_ever before update or delete on catalogue_versions
    for each row execute function catalogue_versions_are_for_ever();
