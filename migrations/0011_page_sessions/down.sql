alter table sessions drop column page_digest;
