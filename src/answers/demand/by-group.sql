-- How many pieces of each interchange group were used or wanted, on which tickets and models?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: interchange varchar, pieces bigint, replaced bigint, wanted bigint, routine bigint, tickets bigint, models bigint,
--   top_model varchar, top_pieces bigint, first_on date, last_on date
with chosen as (
  select d.*
  from group_demand d
  join visits v using (ticket_no)
  where d.interchange is not null
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or d.day >= getvariable('from_date'))
    and (getvariable('to_date') is null or d.day <= getvariable('to_date'))
), per_model as (
  select interchange, maker, model, sum(qty) as pieces
  from chosen
  group by interchange, maker, model
), top_model as (
  select interchange, count(*) as models, arg_max(model, pieces order by model, maker) as top_model, max(pieces) as top_pieces
  from per_model
  group by interchange
)
select c.interchange,
  sum(c.qty)::bigint as pieces,
  coalesce(sum(c.qty) filter (c.action = 'replaced'), 0)::bigint as replaced,
  coalesce(sum(c.qty) filter (c.action = 'wanted'), 0)::bigint as wanted,
  coalesce(sum(c.qty) filter (c.routine), 0)::bigint as routine,
  count(distinct c.ticket_no) as tickets,
  any_value(t.models) as models, any_value(t.top_model) as top_model, any_value(t.top_pieces)::bigint as top_pieces,
  min(c.day) as first_on, max(c.day) as last_on
from chosen c
join top_model t on t.interchange = c.interchange
group by c.interchange
order by pieces desc, c.interchange
