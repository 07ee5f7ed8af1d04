drop table catalogue_versions;
drop function catalogue_versions_are_for_ever();
drop table catalogues;
