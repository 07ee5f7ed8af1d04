drop table painting_log;
