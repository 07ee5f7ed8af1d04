alter table frozen_tables alter column contents set compression default;
alter table lists
    alter column draft set compression default,
    alter column sealed set compression default;
