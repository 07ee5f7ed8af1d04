alter table rounds drop constraint rounds_version_taken;
alter table rounds add constraint rounds_number_taken unique (club_id, season_id, week_no, round_no);
alter table rounds drop constraint rounds_repair;
alter table rounds drop constraint rounds_version;
alter table rounds drop column repair;
alter table rounds drop column version;
