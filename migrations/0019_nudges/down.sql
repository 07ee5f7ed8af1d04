drop table nudges;
