drop table brought_units;
