alter table players add column seat smallint
    constraint players_seat check (seat between 1 and 54);
comment on column players.seat is 'Number in the table of a round robin; whoever takes the place of a leaver has the same.';
