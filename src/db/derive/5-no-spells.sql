-- Parts followed over records that have changed since are forgotten; `5-spells.sql` makes them anew when they are asked for.
drop table if exists spells;
drop view if exists sights;
drop table if exists worn_visits;
