-- The waiting room for the rows of one import, empty.
create schema if not exists staging;
create or replace table staging.tickets as
select * exclude (import_no), 0 as file_no, null::varchar as fate, null::varchar as other_file, null::integer as other_line
from ledger.tickets
limit 0;
create or replace table staging.findings as
select * exclude (import_no), 0 as file_no, null::varchar as fate, null::varchar as why, null::varchar as other_file, null::integer as other_line
from ledger.findings
limit 0;
create or replace table staging.models as
select * exclude (import_no), 0 as file_no, null::varchar as fate
from ledger.models
limit 0;
create or replace table staging.parts as
select * exclude (import_no), 0 as file_no, null::varchar as fate
from ledger.parts
limit 0;
create or replace table staging.fits as
select * exclude (import_no), 0 as file_no, null::varchar as fate
from ledger.fits
limit 0;
create or replace table staging.suppliers as
select * exclude (import_no), 0 as file_no, null::varchar as fate
from ledger.suppliers
limit 0;
create or replace table staging.orders as
select * exclude (import_no), 0 as file_no, null::varchar as fate
from ledger.orders
limit 0;
