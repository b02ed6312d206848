-- Ticket numbers written unlike the shop's usual way, with the way they are read; and numbers that more than one row bears.
create or replace table renumbered as
with written as (
  select ticket_no, count(*) as n, number_key(ticket_no) as number_key
  from ledger.tickets
  group by ticket_no
), fronts as (
  -- What stands before the digits, in the numbers that are made of just that.
  select regexp_extract(ticket_no, '^([^0-9]*)[0-9]+$', 1) as front, sum(n) as n
  from written
  where regexp_matches(ticket_no, '^[^0-9]*[0-9]+$')
  group by front
), usual as (
  select front, number_key(front) as front_key
  from fronts
  where n * 2 > (select sum(n) from written)
), read_as as (
  select number_key, coalesce(
      max(u.front || substr(number_key, length(u.front_key) + 1))
        filter (where starts_with(number_key, u.front_key) and regexp_full_match(substr(number_key, length(u.front_key) + 1), '[0-9]+')),
      arg_max(ticket_no, n)) as ticket_no
  from written
  left join usual u on true
  group by number_key
), all_written as (
  select ticket_no, number_key
  from written
  union all
  select f.ticket_no, number_key(f.ticket_no) as number_key
  from (select distinct ticket_no from ledger.findings) f
  anti join written w on w.ticket_no = f.ticket_no
)
select a.ticket_no as written, r.ticket_no
from all_written a
join read_as r using (number_key)
where a.ticket_no <> r.ticket_no;

create or replace table several as
with numbered as (
  select t.ticket_no as written, coalesce(r.ticket_no, t.ticket_no) as ticket_no, count(*) as n, r.written is not null as respelt
  from ledger.tickets t
  left join renumbered r on r.written = t.ticket_no
  group by all
), many as (
  select ticket_no
  from numbered
  group by ticket_no
  having sum(n) > 1 or bool_or(respelt)
)
select distinct written, ticket_no
from numbered
semi join many using (ticket_no)
union
select written, ticket_no
from renumbered;
