-- Which open jobs wait for a part, and when is it due?
-- Parameters: as_of date
-- Columns: ticket_no varchar, due_on date, lead_days double
with taken as (
  -- As in the Stock room: what deliveries took from five of them on, else as quoted.
  select supplier, avg(date_diff('day', ordered_on, arrived_on)) as days
  from (select distinct supplier, order_no, ordered_on, arrived_on from orders where arrived_on between ordered_on and getvariable('as_of'))
  group by supplier
  having count(*) >= 5
), wanted as (
  select distinct ticket_no, interchange
  from group_demand
  where waiting and interchange is not null
), coming as (
  select coalesce(g.interchange, p.part_no) as interchange, min(p.due_on) filter (p.due_on > getvariable('as_of')) as due_on,
    min(coalesce(t.days, p.lead_days, s.lead_days)) as lead_days
  from parts p
  left join interchange g on g.part_no = p.part_no
  left join suppliers s on s.supplier = p.supplier
  left join taken t on t.supplier = p.supplier
  group by 1
)
select w.ticket_no, max(c.due_on) as due_on, max(c.lead_days) as lead_days
from wanted w
left join coming c on c.interchange = w.interchange
group by w.ticket_no
order by w.ticket_no
