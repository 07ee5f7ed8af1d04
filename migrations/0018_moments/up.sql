-- Up to when the moments of a season, such as a reveal, have made versions of it.
alter table seasons add column moments_told_at timestamptz;
