-- Which waiting tickets are known already; a number that comes again with other content is another row of the same ticket.
insert into staging.tickets_fate
with in_order as (
  select ticket_no, row_key, file_no, source_line, row_number() over (partition by row_key order by source_file, file_no, source_line) as nth
  from staging.tickets
)
select w.file_no, w.source_line, w.row_key, 'known' as fate
from in_order w
left join (select distinct row_key from ledger.tickets) kept on kept.row_key = w.row_key
where kept.row_key is not null or w.nth > 1;

-- New rows whose number another row bears.
insert into staging.numbers_again
with waiting as (
  select number_key(ticket_no) as number_key, ticket_no, row_key, file_no, source_line
  from staging.tickets
  anti join staging.tickets_fate using (file_no, source_line, row_key)
), twice as (
  select number_key
  from (select number_key from waiting union all select number_key(ticket_no) from ledger.tickets)
  group by number_key
  having count(*) > 1
)
select ticket_no, row_key, file_no, source_line
from waiting
semi join twice using (number_key);
