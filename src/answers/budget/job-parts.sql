-- Which parts did each job use or want, and when did it come in?
-- Parameters: to_date date
-- Columns: ticket_no varchar, day date, interchange varchar, pieces bigint
select ticket_no, day, interchange, sum(qty)::bigint as pieces
from group_demand
where interchange is not null and day <= getvariable('to_date')
group by ticket_no, day, interchange
order by day, ticket_no, interchange
