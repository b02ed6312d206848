-- When were how many pieces of each interchange group used or wanted, on which ticket or batch, and how did the reel come in?
-- Parameters: to_date date
-- Columns: interchange varchar, day date, opening varchar, pieces double, wanted boolean, together varchar
select d.interchange, d.day, v.opening, sum(d.qty)::double as pieces, d.action = 'wanted' as wanted, coalesce(v.batch, d.ticket_no) as together
from group_demand d
join visits v using (ticket_no)
where d.interchange is not null and d.day <= getvariable('to_date')
group by d.interchange, d.day, v.opening, d.action, coalesce(v.batch, d.ticket_no), d.ticket_no
order by d.day, d.interchange, together, v.opening, wanted, pieces
