-- The rows of a week's table are kept of every version; from the close of the week on, the lines behind
-- them, too. A table that was frozen before this column is of a closed week.
alter table frozen_tables add column whole boolean not null default true;
