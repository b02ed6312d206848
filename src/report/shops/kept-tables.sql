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

-- What lots, minutes and use come to in each shop: counts that add up. Technicians tell rows apart here and are told to nobody.
create or replace table kept.refitted (
  shop varchar, size_or_part varchar, supplier varchar, month integer, position varchar, maker varchar, model varchar, technician varchar,
  fished integer, soon boolean, failed boolean, fitted bigint
);

create or replace table kept.names_written (shop varchar, size_or_part varchar, supplier varchar, month integer, name varchar, count bigint);

create or replace table kept.carriers (
  shop varchar, size_or_part varchar, supplier varchar, serial varchar, maker varchar, model varchar, position varchar, position_name varchar,
  ticket_no varchar, fitted_on date, last_seen_on date, lot varchar, carried boolean
);

create or replace table kept.minutes (
  shop varchar, job varchar, reel_kind varchar, maker varchar, model varchar, labour_min double, slip varchar, warranty boolean, in_batch boolean, jobs integer
);

create or replace table kept.demand_months (shop varchar, interchange varchar, month date, replaced bigint, wanted bigint);

create or replace table kept.group_names (shop varchar, interchange varchar, name varchar);
