drop table refresh_tokens;
drop table sessions;
drop table sign_in_failures;
drop table accounts;
