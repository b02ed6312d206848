-- One row of each ticket number that has several: the one that counts, its blanks filled from rows that agree with it.
create or replace table settled_tickets as
select ticket_no,
  arg_min(received_on, nth) as received_on, arg_min(finished_on, nth) as finished_on, arg_min(maker, nth) as maker, arg_min(model, nth) as model,
  arg_min(reel_kind, nth) as reel_kind, arg_min(serial, nth) as serial, arg_min(water, nth) as water, arg_min(salt_days, nth) as salt_days,
  arg_min(use_days, nth) as use_days, arg_min(months_since_service, nth) as months_since_service, arg_min(rinse, nth) as rinse,
  arg_min(came_in, (coalesce(came_in_guessed, false), nth)) as came_in, arg_min(job, nth) as job, arg_min(complaint, nth) as complaint, arg_min(technician, nth) as technician,
  arg_min(batch, nth) as batch, arg_min(labour_min, nth) as labour_min, arg_min(parts_wait_days, nth) as parts_wait_days,
  arg_min(warranty, nth) as warranty, arg_min(outcome, nth) as outcome, arg_min(labour_charge, nth) as labour_charge,
  arg_min(parts_charge, nth) as parts_charge, arg_min(note, nth) as note,
  arg_min(came_in_guessed, (coalesce(came_in_guessed, false), nth)) filter (where came_in is not null) as came_in_guessed,
  arg_min(came_as, nth) as came_as, arg_min(import_no, nth) as import_no, arg_min(source_file, nth) as source_file, arg_min(source_line, nth) as source_line,
  arg_min(row_key, nth) as row_key
from versions_judged
where nth = 1 or (verdict is null and agrees) or (counts_verdict = 'fills' and verdict = 'left')
group by ticket_no;

-- Findings read from the same line as a row that does not count stay out where the row that counts has its own.
create or replace table settled_findings as
with placed as (
  select f.* replace (coalesce(v.ticket_no, s.ticket_no) as ticket_no), f.ticket_no as written,
    f.of_version is not null and v.nth > 1 as of_another, bool_or(f.of_version is not null and v.nth = 1) over (partition by coalesce(v.ticket_no, s.ticket_no)) as has_own
  from ledger.findings f
  join several s on s.written = f.ticket_no
  left join versions v on v.row_key = f.of_version
), counted as (
  select *, row_number() over (
    partition by written, coalesce(of_version, ''), ticket_no, position, part_no, mode, grade, action, routine, qty, unit_cost, minutes, note
    order by import_no, source_file, source_line) as nth
  from placed
  where not (of_another and has_own)
)
select * exclude (written, of_another, has_own, nth)
from counted
qualify row_number() over (
  partition by ticket_no, position, part_no, mode, grade, action, routine, qty, unit_cost, minutes, note, nth
  order by import_no desc, source_file desc, source_line desc) = 1;
