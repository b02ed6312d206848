-- The waiting room for the rows of one import, empty.
create schema if not exists staging;
create or replace table staging.tickets as
select * exclude (import_no), 0 as file_no
from ledger.tickets
limit 0;
create or replace table staging.findings as
select * exclude (import_no), 0 as file_no
from ledger.findings
limit 0;
create or replace table staging.models as
select * exclude (import_no), 0 as file_no
from ledger.models
limit 0;
create or replace table staging.parts as
select * exclude (import_no), 0 as file_no
from ledger.parts
limit 0;
create or replace table staging.fits as
select * exclude (import_no), 0 as file_no
from ledger.fits
limit 0;
create or replace table staging.suppliers as
select * exclude (import_no), 0 as file_no
from ledger.suppliers
limit 0;
create or replace table staging.orders as
select * exclude (import_no), 0 as file_no
from ledger.orders
limit 0;
