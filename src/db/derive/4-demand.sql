-- Parts used or wanted, by day. A finding without a part number takes the one part that fits there, if there is just one.
create or replace table demand as
with only_fit as (
  select maker, model, position, min(part_no) as part_no
  from fits
  where part_no is not null and coalesce(qty, 1) > 0
  group by maker, model, position
  having count(distinct part_no) = 1
), taken as not materialized (
  select f.part_no, v.received_on as day, coalesce(f.qty, 1) as qty, f.action, coalesce(f.routine, false) as routine, f.qty is null as qty_assumed,
    f.action = 'wanted' and (not v.finished or (v.finished_on is null and v.outcome is null)) as waiting, f.ticket_no, f.position, v.maker, v.model
  from findings f
  join visits v using (ticket_no)
  where f.action in ('replaced', 'wanted')
)
-- Apart, because most bear a number: a million rows are not held against the fits for the sake of a few.
select part_no, day, qty, action, routine, qty_assumed, false as part_from_fits, waiting, ticket_no, position, maker, model
from taken
where part_no is not null
union all
select o.part_no, t.day, t.qty, t.action, t.routine, t.qty_assumed, true as part_from_fits, t.waiting, t.ticket_no, t.position, t.maker, t.model
from taken t
left join only_fit o on o.model = t.model and o.maker is not distinct from t.maker and o.position = t.position
where t.part_no is null;
