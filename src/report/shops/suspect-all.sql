-- Has the reels looked up that carry a part of any size (or number) and supplier, whenever it was fitted.
delete from suspected;
insert into suspected
select distinct coalesce(p.size, d.part_no) as size_or_part, p.supplier, date '0001-01-01' as from_date, date '9999-12-31' as to_date
from demand d
left join parts p on p.part_no = d.part_no
where d.action = 'replaced' and d.part_no is not null;
