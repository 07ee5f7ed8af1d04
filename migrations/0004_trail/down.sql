drop table trail_heads;
drop table trail;
drop function trail_is_for_ever();
