-- Puts what one shop's records come to beside the other shops': numbers, tags and names of that shop carry its name, so that no two
-- shops' tickets, reels, batches or technicians are taken for one. What customers said and notes stay behind.
-- Parameters: shop varchar, shop_no integer, from_visit integer
insert into kept.places
select (row_number() over (order by n.place) + (select coalesce(max(place), 0) from kept.places))::smallint as place, n.position
from places n
anti join kept.places k on k.position = n.position;

insert into kept.visits by name
select * replace (
  visit + getvariable('from_visit')::integer as visit, getvariable('shop_no')::smallint as shop_no,
  getvariable('shop') || '/' || ticket_no as ticket_no, getvariable('shop') || '/' || previous_ticket as previous_ticket,
  getvariable('shop') || '/' || serial as serial, getvariable('shop') || '/' || batch as batch,
  getvariable('shop') || '/' || technician as technician, getvariable('shop') || '/' || source_file as source_file,
  null as complaint, null as note)
from visits
order by visit;

insert into kept.inspected by name
select i.* replace (i.visit + getvariable('from_visit')::integer as visit, k.place as place)
from inspected i
join kept.places k on k.position = i.position;

insert into kept.failures by name
select f.* replace (
  f.visit + getvariable('from_visit')::integer as visit, f.put_right + getvariable('from_visit')::integer as put_right, k.place as place)
from failures f
join kept.places k on k.position = f.position;
