-- When were how many pieces of each interchange group used or wanted, and on which ticket or batch?
-- Parameters:
-- Columns: interchange varchar, day date, pieces bigint, wanted boolean, together varchar
select d.interchange, d.day, sum(d.qty)::bigint as pieces, d.action = 'wanted' as wanted, coalesce(v.batch, d.ticket_no) as together
from group_demand d
join visits v using (ticket_no)
where d.interchange is not null
group by d.interchange, d.day, d.action, coalesce(v.batch, d.ticket_no), d.ticket_no
order by d.day, d.interchange, together, wanted, pieces
