drop table painting_claims;
