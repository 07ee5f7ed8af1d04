drop table games;
drop table rounds;
