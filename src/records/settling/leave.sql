-- Clears the waiting room.
drop schema if exists staging cascade;
