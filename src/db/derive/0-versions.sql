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

create or replace table versions_judged as
select o.*, w.row_key as counts_key, w.verdict as counts_verdict,
  not coalesce(o.received_on <> w.received_on or o.maker <> w.maker or o.model <> w.model or o.reel_kind <> w.reel_kind or o.serial <> w.serial
    or o.water <> w.water or o.salt_days <> w.salt_days or o.use_days <> w.use_days or o.months_since_service <> w.months_since_service
    or o.rinse <> w.rinse or o.complaint <> w.complaint or o.batch <> w.batch, false)
  and not coalesce(o.came_in <> w.came_in and not coalesce(o.came_in_guessed, false) and not coalesce(w.came_in_guessed, false), false)
  -- While a job is open, these are still being written.
  and (not o.closed or not coalesce(o.finished_on <> w.finished_on or o.job <> w.job or o.technician <> w.technician
    or o.labour_min <> w.labour_min or o.parts_wait_days <> w.parts_wait_days or o.warranty <> w.warranty or o.outcome <> w.outcome
    or o.labour_charge <> w.labour_charge or o.parts_charge <> w.parts_charge or o.note <> w.note, false)) as agrees
from versions o
join versions w on w.ticket_no = o.ticket_no and w.nth = 1;

create or replace table conflicts as
select ticket_no, counts_key, row_key
from versions_judged
where nth > 1 and verdict is null and not agrees and row_key is distinct from counts_key;
