alter table players drop column left_at;
