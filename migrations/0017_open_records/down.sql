drop index seasons_directory;
drop index players_account;
drop table open_records;
