drop table adjustments;
drop table rulings;
drop table slips;
