drop table frozen_tables;
drop function frozen_tables_are_for_ever();
