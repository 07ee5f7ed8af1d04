-- Tables are kept with every change and lists are sealed by everybody at once: lz4 packs them in a
-- fraction of the time that the default takes. A PostgreSQL that was built without it keeps its default.
do $$
begin
    alter table frozen_tables alter column contents set compression lz4;
    alter table lists
        alter column draft set compression lz4,
        alter column sealed set compression lz4;
exception
    when feature_not_supported then
        raise notice 'this PostgreSQL has no lz4';
end
$$;
