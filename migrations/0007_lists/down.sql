drop table late_leaves;
drop table lists;
