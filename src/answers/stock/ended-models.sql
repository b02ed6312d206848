-- Which parts go into models that are no longer made, how many of each, and how many such reels still come in?
-- Parameters: as_of date, from_date date, recent_from date
-- Columns: maker varchar, model varchar, discontinued_on date, tickets_now double, tickets_before double, interchange varchar,
--   pieces double, all_pieces double
with ended as (
  select maker, model, discontinued_on
  from models
  where discontinued_on is not null and discontinued_on <= getvariable('as_of')
), came as (
  select e.maker, e.model, e.discontinued_on,
    count(v.ticket_no) filter (v.received_on >= getvariable('recent_from')) as tickets_now,
    count(v.ticket_no) filter (v.received_on < getvariable('recent_from')) as tickets_before
  from ended e
  left join visits v on v.model = e.model and v.maker is not distinct from e.maker
    and v.received_on between getvariable('from_date') and getvariable('as_of')
  group by e.maker, e.model, e.discontinued_on
), used as (
  select interchange, maker, model, sum(qty) as pieces
  from group_demand
  where interchange is not null and day between getvariable('from_date') and getvariable('as_of')
  group by interchange, maker, model
), whole as (
  select interchange, sum(pieces) as all_pieces
  from used
  group by interchange
)
select c.maker, c.model, c.discontinued_on, c.tickets_now::double as tickets_now, c.tickets_before::double as tickets_before,
  u.interchange, u.pieces::double as pieces, w.all_pieces::double as all_pieces
from came c
join used u on u.model = c.model and u.maker is not distinct from c.maker
join whole w on w.interchange = u.interchange
order by c.model, c.maker, u.interchange
