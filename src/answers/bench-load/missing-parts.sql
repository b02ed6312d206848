-- Which parts that a job needs are not on the shelf, and how often did a job of each kind need one of them in the last two years?
-- Parameters: as_of date, since date
-- Columns: interchange varchar, name varchar, job varchar, reel_kind varchar, jobs bigint, needed bigint, due_on date, lead_days double
with taken as (
  -- As in the Stock room: what deliveries took from five of them on, else as quoted.
  select supplier, avg(date_diff('day', ordered_on, arrived_on)) as days
  from (select distinct supplier, order_no, ordered_on, arrived_on from orders where arrived_on between ordered_on and getvariable('as_of'))
  group by supplier
  having count(*) >= 5
), shelf as (
  select coalesce(g.interchange, p.part_no) as interchange, min(p.name) as name, sum(coalesce(p.on_hand, 0)) as on_hand, count(p.on_hand) as counted,
    min(p.due_on) filter (p.due_on > getvariable('as_of')) as due_on, min(coalesce(t.days, p.lead_days, s.lead_days)) as lead_days
  from parts p
  left join interchange g on g.part_no = p.part_no
  left join suppliers s on s.supplier = p.supplier
  left join taken t on t.supplier = p.supplier
  where coalesce(p.essential, true)
  group by 1
), empty as (
  select *
  from shelf
  where on_hand <= 0 and counted > 0
), done as (
  select job, reel_kind, count(*) as jobs
  from visits
  where finished and received_on > getvariable('since') and received_on <= getvariable('as_of')
  group by job, reel_kind
), used as (
  select v.job, v.reel_kind, d.interchange, count(distinct d.ticket_no) as needed
  from group_demand d
  join visits v on v.ticket_no = d.ticket_no
  where v.finished and v.received_on > getvariable('since') and v.received_on <= getvariable('as_of')
  group by v.job, v.reel_kind, d.interchange
)
select e.interchange, e.name, u.job, u.reel_kind, o.jobs, u.needed, e.due_on, e.lead_days
from empty e
join used u on u.interchange = e.interchange
join done o on o.job is not distinct from u.job and o.reel_kind is not distinct from u.reel_kind
order by e.interchange, u.needed desc, u.job, u.reel_kind
