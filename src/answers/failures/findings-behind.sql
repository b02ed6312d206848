-- Which findings stand behind this row of the failure table?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date,
--   opening varchar, denominator varchar, group_code varchar, position varchar
-- Columns: ticket_no varchar, received_on date, maker varchar, model varchar, reel_kind varchar, serial varchar, opening varchar,
--   job varchar, water varchar, salt_days double, counted boolean, failed boolean, mode varchar, grade integer, action varchar,
--   routine boolean, part_no varchar, qty integer, note varchar, source_file varchar, source_line integer
select i.ticket_no, i.received_on, i.maker, i.model, i.reel_kind, i.serial, i.opening, i.job, i.water, i.salt_days,
  case when getvariable('denominator') = 'strict' then i.written else i.counted end as counted,
  i.failed, f.mode, f.grade, f.action, coalesce(f.routine, false) as routine, f.part_no, f.qty, f.note,
  f.source_file, f.source_line
from inspections i
join findings f on f.ticket_no = i.ticket_no and f.position = i.position
left join position_list p on p.position = i.position
where i.position = getvariable('position')
  and (getvariable('reel_kind') is null or i.reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or i.maker = getvariable('maker'))
  and (getvariable('model') is null or i.model = getvariable('model'))
  and (getvariable('water') is null or i.water = getvariable('water'))
  and (getvariable('from_date') is null or i.received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or i.received_on <= getvariable('to_date'))
  and (getvariable('opening') = '*' or i.opening = getvariable('opening'))
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
order by i.received_on desc, i.ticket_no, f.source_file, f.source_line, f.part_no, f.action, f.mode, f.note
