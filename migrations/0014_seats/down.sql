alter table players drop column seat;
