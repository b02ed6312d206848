-- Positions by number, in the order of the list: millions of rows are grouped by number in a third of the time.
create or replace table places as
select (row_number() over (order by p.rowid nulls last, n.position))::smallint as place, n.position
from (
  select position from findings where not starts_with(position, '?')
  union
  select position from coverage
) n
left join position_list p on p.position = n.position;
