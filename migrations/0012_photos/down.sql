drop table painting_photos;
