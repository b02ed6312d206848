-- The rows of a ticket number that has several: which counts, which only say more or less of the same, which contradict.
-- First what the owner decided, then a finished job before an open one, then the newest
-- (`came_as` is the order that a backup keeps of rows whose imports it makes one).
create or replace table versions as
with told as (
  select t.* replace (s.ticket_no as ticket_no), t.ticket_no as written, d.verdict,
    t.outcome is distinct from 'waiting' and (t.finished_on is not null or t.outcome is not null) as closed
  from ledger.tickets t
  join several s on s.written = t.ticket_no
  left join decided.tickets d on number_key(d.ticket_no) = number_key(s.ticket_no) and d.row_key = t.row_key
), apart as (
  select * replace (if(verdict = 'own job',
    ticket_no || ' (' || 1 + row_number() over (partition by ticket_no, verdict order by import_no, coalesce(came_as, 0), source_file, source_line) || ')', ticket_no) as ticket_no)
  from told
)
select *, row_number() over (
  partition by ticket_no
  order by coalesce(verdict in ('counts', 'fills'), false) desc, closed desc, import_no desc, coalesce(came_as, 0) desc, source_file desc, source_line desc) as nth
from apart;

-- What each row says, cell by cell. A guess says nothing, and while a job is open some cells are still being written.
create or replace table versions_judged as
with cells as (
  unpivot (
    select ticket_no as number, nth, closed, verdict, received_on::varchar as received_on, maker, model, reel_kind, serial, water, salt_days::varchar as salt_days,
      use_days::varchar as use_days, months_since_service::varchar as months_since_service, rinse, complaint, batch, if(came_in_guessed, null, came_in) as came_in,
      finished_on::varchar as finished_on, job, technician, labour_min::varchar as labour_min, parts_wait_days::varchar as parts_wait_days,
      warranty::varchar as warranty, outcome, labour_charge::varchar as labour_charge, parts_charge::varchar as parts_charge, note
    from versions
  ) on columns(* exclude (number, nth, closed, verdict)) into name cell value said
), heard as (
  select *, closed or cell not in ('finished_on', 'job', 'technician', 'labour_min', 'parts_wait_days', 'warranty', 'outcome', 'labour_charge', 'parts_charge', 'note') as counts
  from cells
), against_first as (
  select distinct o.number, o.nth
  from heard o
  join cells w on w.number = o.number and w.cell = o.cell and w.nth = 1
  where o.counts and o.said <> w.said
), speaking as (
  select *, first_value(said) over cell_of as said_first, first_value(nth) over cell_of as first_nth
  from heard
  anti join against_first using (number, nth)
  where nth = 1 or verdict is null
  window cell_of as (partition by number, cell order by nth)
), against_another as (
  -- Two rows that fill the same blank otherwise contradict each other, though neither contradicts the row that counts.
  select number, nth, first_nth
  from speaking
  where counts and said <> said_first
)
select o.*, w.row_key as counts_key, w.verdict as counts_verdict,
  a.nth is null and o.nth not in (select nth from against_another where number = o.ticket_no) as agrees,
  o.nth in (select first_nth from against_another where number = o.ticket_no) as is_contradicted
from versions o
join versions w on w.ticket_no = o.ticket_no and w.nth = 1
left join against_first a on a.number = o.ticket_no and a.nth = o.nth;

create or replace table conflicts as
select ticket_no, counts_key, row_key
from versions_judged
where nth > 1 and verdict is null and not agrees and row_key is distinct from counts_key;
