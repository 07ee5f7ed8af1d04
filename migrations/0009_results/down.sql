drop table adjustments;
drop table slips;
