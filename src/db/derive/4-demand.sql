-- Parts used or wanted, by day. A finding without a part number takes the one part that fits there, if there is just one.
create or replace table demand as
with only_fit as (
  select maker, model, position, min(part_no) as part_no
  from fits
  where part_no is not null and coalesce(qty, 1) > 0
  group by maker, model, position
  having count(distinct part_no) = 1
)
select coalesce(f.part_no, o.part_no) as part_no, v.received_on as day, coalesce(f.qty, 1) as qty, f.action,
  coalesce(f.routine, false) as routine, f.qty is null as qty_assumed, f.part_no is null as part_from_fits,
  f.action = 'wanted' and (not v.finished or (v.finished_on is null and v.outcome is null)) as waiting,
  f.ticket_no, f.position, v.maker, v.model
from findings f
join visits v using (ticket_no)
left join only_fit o on f.part_no is null and o.model = v.model and o.maker is not distinct from v.maker and o.position = f.position
where f.action in ('replaced', 'wanted');
