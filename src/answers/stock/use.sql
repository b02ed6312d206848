-- How many pieces of each interchange group were used and wanted, in the whole period and lately, and what do open jobs wait for?
-- Parameters: from_date date, recent_from date, to_date date, waiting_from date
-- Columns: interchange varchar, pieces bigint, wanted bigint, recent bigint, waiting bigint
select coalesce(g.interchange, d.part_no) as interchange,
  coalesce(sum(d.qty) filter (d.day >= getvariable('from_date')), 0)::bigint as pieces,
  coalesce(sum(d.qty) filter (d.day >= getvariable('from_date') and d.action = 'wanted'), 0)::bigint as wanted,
  coalesce(sum(d.qty) filter (d.day >= getvariable('recent_from')), 0)::bigint as recent,
  coalesce(sum(d.qty) filter (d.waiting and d.day >= getvariable('waiting_from')), 0)::bigint as waiting
from demand d
left join interchange g on g.part_no = d.part_no
where d.part_no is not null and d.day <= getvariable('to_date')
group by coalesce(g.interchange, d.part_no)
order by interchange
