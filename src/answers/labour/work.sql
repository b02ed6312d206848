-- What each finished job was, who did it, what came with it, and what was charged.
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: ticket_no varchar, received_on date, job varchar, reel_kind varchar, maker varchar, model varchar, tier varchar,
--   technician varchar, labour_min double, warranty boolean, in_batch boolean, parts_replaced integer, stuck_screws boolean, labour_charge double,
--   source_file varchar, source_line integer
with work as (
  select f.ticket_no, count(*) filter (where f.action = 'replaced') as parts_replaced,
    coalesce(bool_or(p.family = 'screw' and f.mode in ('seized', 'stripped', 'galled')), false) as stuck_screws
  from findings f
  left join position_list p using (position)
  group by f.ticket_no
)
select v.ticket_no, v.received_on, v.job, v.reel_kind, v.maker, v.model, v.tier, v.technician, v.labour_min, v.warranty,
  v.batch is not null as in_batch, coalesce(w.parts_replaced, 0)::integer as parts_replaced, coalesce(w.stuck_screws, false) as stuck_screws,
  v.labour_charge, v.source_file, v.source_line
from visits v
left join work w using (ticket_no)
where v.finished
  and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or v.maker = getvariable('maker'))
  and (getvariable('model') is null or v.model = getvariable('model'))
  and (getvariable('water') is null or v.water = getvariable('water'))
  and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
order by v.received_on, v.ticket_no
