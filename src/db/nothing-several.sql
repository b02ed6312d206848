-- What settling ticket numbers makes while no number has several rows. Written down, because working it out of nothing takes the
-- engine longer than a small derivation.
create or replace table renumbered (written varchar, ticket_no varchar);

create or replace table several (written varchar, ticket_no varchar);

create or replace table versions as
select *, ticket_no as written, null::varchar as verdict, true as closed, 0::bigint as nth
from ledger.tickets
limit 0;

create or replace table versions_judged as
select *, null::varchar as counts_key, null::varchar as counts_verdict, true as agrees, true as is_contradicted
from versions
limit 0;

create or replace table conflicts (ticket_no varchar, counts_key varchar, row_key varchar);

create or replace table settled_tickets as
select *
from ledger.tickets
limit 0;

create or replace table settled_findings as
select *
from ledger.findings
limit 0;
