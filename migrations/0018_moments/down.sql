alter table seasons drop column moments_told_at;
