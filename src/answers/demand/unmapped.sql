-- What was used or wanted without a part number that can be told?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: position varchar, name varchar, pieces bigint, tickets bigint
select d.position, coalesce(any_value(p.name), d.position) as name, sum(d.qty)::bigint as pieces, count(distinct d.ticket_no) as tickets
from group_demand d
join visits v using (ticket_no)
left join position_list p on p.position = d.position
where d.interchange is null
  and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or v.maker = getvariable('maker'))
  and (getvariable('model') is null or v.model = getvariable('model'))
  and (getvariable('water') is null or v.water = getvariable('water'))
  and (getvariable('from_date') is null or d.day >= getvariable('from_date'))
  and (getvariable('to_date') is null or d.day <= getvariable('to_date'))
group by d.position
order by pieces desc, d.position
