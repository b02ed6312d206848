-- Nothing waits to be derived.
create or replace table put_off (failure_grade integer);
