-- A row of a chart may hold for one clearance class only; without one it holds for every class that has no row of its own.
-- A new edition of a chart is a chart of its own and names the one that it takes over from.

alter table maker_chart_row add column clearance_class clearance_class;

alter table maker_chart_row drop constraint maker_chart_row_site_id_chart_id_taper_numrange_excl;
alter table maker_chart_row add constraint maker_chart_row_overlap exclude using gist (
  site_id with =, chart_id with =, taper with =, (coalesce(clearance_class::text, 'all')) with =,
  numrange(over_mm::numeric, incl_mm::numeric, '(]') with &&
);

alter table maker_chart add column replaces_id uuid;
alter table maker_chart add constraint maker_chart_site_id_replaces_id_fkey
  foreign key (site_id, replaces_id) references maker_chart (site_id, id);
alter table maker_chart add constraint maker_chart_replaces_another check (replaces_id <> id);

create index position_maker_chart on position (site_id, maker_chart_id);
