-- Rows that came back in a list of rows to fix get the lines of the files they came from.
update staging.tickets set source_line = m.from_line from staging.moved_lines m where m.file_no = staging.tickets.file_no and m.source_line = staging.tickets.source_line;
update staging.findings set source_line = m.from_line from staging.moved_lines m where m.file_no = staging.findings.file_no and m.source_line = staging.findings.source_line;
update staging.models set source_line = m.from_line from staging.moved_lines m where m.file_no = staging.models.file_no and m.source_line = staging.models.source_line;
update staging.parts set source_line = m.from_line from staging.moved_lines m where m.file_no = staging.parts.file_no and m.source_line = staging.parts.source_line;
update staging.fits set source_line = m.from_line from staging.moved_lines m where m.file_no = staging.fits.file_no and m.source_line = staging.fits.source_line;
update staging.suppliers set source_line = m.from_line from staging.moved_lines m where m.file_no = staging.suppliers.file_no and m.source_line = staging.suppliers.source_line;
update staging.orders set source_line = m.from_line from staging.moved_lines m where m.file_no = staging.orders.file_no and m.source_line = staging.orders.source_line;
