-- Takes the rows of a file that could not be read to its end out of the waiting room.
-- Parameters: file_no integer
delete from staging.tickets where file_no = getvariable('file_no');
delete from staging.findings where file_no = getvariable('file_no');
delete from staging.models where file_no = getvariable('file_no');
delete from staging.parts where file_no = getvariable('file_no');
delete from staging.fits where file_no = getvariable('file_no');
delete from staging.suppliers where file_no = getvariable('file_no');
delete from staging.orders where file_no = getvariable('file_no');
