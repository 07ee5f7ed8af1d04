drop table idempotency_keys;
drop table invitations;
drop table memberships;
drop table clubs;
