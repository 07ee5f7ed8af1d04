alter table frozen_tables disable trigger frozen_tables_are_for_ever;
delete from frozen_tables where not whole;
alter table frozen_tables enable trigger frozen_tables_are_for_ever;
alter table frozen_tables drop column whole;
