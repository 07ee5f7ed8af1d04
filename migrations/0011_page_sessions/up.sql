-- The digest of the secret that a browser keeps in its cookie; null for a program's session.
alter table sessions add column page_digest bytea;
alter table sessions add constraint sessions_page_digest_taken unique (page_digest);
