-- Which parts were followed at a place, how long each was good and by when it had failed, and which rows of which files tell so?
-- Parameters: clock varchar, first_sights varchar, place integer, reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: thing integer, ticket_no varchar, received_on date, maker varchar, model varchar, reel_kind varchar, job varchar, counted boolean,
--   hit boolean, why varchar, position varchar, part_no varchar, low double, high double, said varchar, import_no integer, source_file varchar,
--   source_line integer
with clocked as (
  select s.reel, s.part, v.*, p.position,
    getvariable('first_sights') <> 'all' and (coalesce(s.first_opening = 'complaint', false) or (s.first_sight and getvariable('first_sights') = 'none')) as chosen,
    coalesce(case getvariable('clock') when 'salt_days' then s.salt_good when 'use_days' then s.use_good else round(s.months_good, 1) end, 0)::double as low,
    (case getvariable('clock') when 'salt_days' then s.salt_failed when 'use_days' then s.use_failed else round(s.months_failed, 1) end)::double as high
  from spells s
  join visits v using (visit)
  join worn_visits w using (visit)
  join places p using (place)
  where s.place = getvariable('place')::smallint
    and (getvariable('clock') <> 'salt_days' or w.water is distinct from 'fresh')
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or w.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
), told as (
  select * exclude (high), if(high > low, high, null) as high, (row_number() over (order by reel, part))::integer as thing,
    case
      when chosen then 'first looked at on a reel that came with something wrong'
      when low = 0 and high = 0 then 'failed before any use was counted'
      when low = 0 and high is null then 'its days or months are not written'
    end as why
  from clocked
), seen as (
  select t.thing, t.position, v.ticket_no, v.received_on, v.import_no, v.source_file, v.source_line
  from sights s
  join told t using (reel, part)
  join visits v on v.visit = s.visit
  where s.place = getvariable('place')::smallint
), made as (
  select thing, received_on as day, ticket_no as seen_on, null as said, import_no, source_file, source_line, 0 as nth
  from seen
  union all
  select s.thing, s.received_on, s.ticket_no, concat_ws(', ', f.mode, 'grade ' || f.grade, f.action), f.import_no, f.source_file, f.source_line, 1
  from findings f
  join seen s using (ticket_no, position)
)
select t.thing, t.ticket_no, t.received_on, t.maker, t.model, t.reel_kind, t.job, t.why is null as counted, t.why is null and t.high is not null as hit,
  t.why, t.position, null::varchar as part_no, t.low, t.high, m.said, m.import_no, m.source_file, m.source_line
from told t
join made m using (thing)
order by t.received_on desc, t.ticket_no, t.thing, m.day, m.seen_on, m.nth, m.import_no, m.source_file, m.source_line, m.said;
