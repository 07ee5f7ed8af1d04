drop table availabilities;
drop table players;
drop table nights;
drop table weeks;
drop table season_seeds;
drop table seasons;
