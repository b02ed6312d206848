-- Makes the tables in which what each shop's records come to waits for the pooled answers, as empty as the shop's own tables are.
create or replace table kept.places as
select (row_number() over (order by rowid))::smallint as place, position
from position_list;

create or replace table kept.visits as
select *
from visits
limit 0;

create or replace table kept.inspected as
select *
from inspected
limit 0;

create or replace table kept.failures as
select *
from failures
limit 0;
