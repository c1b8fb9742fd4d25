BEGIN TRANSACTION;
CREATE TABLE about (
	"key" VARCHAR NOT NULL, 
	value VARCHAR NOT NULL, 
	CONSTRAINT pk_about PRIMARY KEY ("key")
);
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0011');
CREATE TABLE appraisal (
	planter VARCHAR NOT NULL, 
	name VARCHAR NOT NULL, 
	"on" DATE NOT NULL, 
	inspection INTEGER, 
	prices VARCHAR NOT NULL, 
	currency VARCHAR NOT NULL, 
	as_found VARCHAR, 
	reconditioned VARCHAR, 
	note VARCHAR NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_appraisal PRIMARY KEY (id), 
	CONSTRAINT uq_appraisal_planter_name UNIQUE (planter, name)
);
CREATE TABLE before_cell (
	switch_id INTEGER NOT NULL, 
	setting VARCHAR NOT NULL, 
	place VARCHAR NOT NULL, 
	value JSON NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_before_cell PRIMARY KEY (id), 
	CONSTRAINT fk_before_cell_switch_id_switch FOREIGN KEY(switch_id) REFERENCES switch (id) ON DELETE CASCADE, 
	CONSTRAINT uq_before_cell_switch_id_setting_place UNIQUE (switch_id, setting, place)
);
INSERT INTO "before_cell" VALUES(1,'disc','row:1','"C30"',1);
INSERT INTO "before_cell" VALUES(1,'seed','tank:tank 1','"K-1"',2);
CREATE TABLE cell (
	side VARCHAR NOT NULL, 
	setting VARCHAR NOT NULL, 
	place VARCHAR NOT NULL, 
	value JSON NOT NULL, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_cell PRIMARY KEY (id), 
	CONSTRAINT fk_cell_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE, 
	CONSTRAINT uq_cell_planter_id_side_setting_place UNIQUE (planter_id, side, setting, place)
);
INSERT INTO "cell" VALUES('as found','disc','row:1','"C30"',1,1);
INSERT INTO "cell" VALUES('as found','vacuum','fan:fan 1','{"value": 18.0, "unit": "inch_of_water"}',1,2);
CREATE TABLE change (
	entry_id INTEGER NOT NULL, 
	planter VARCHAR NOT NULL, 
	what VARCHAR NOT NULL, 
	setting VARCHAR NOT NULL, 
	place VARCHAR NOT NULL, 
	old VARCHAR NOT NULL, 
	new VARCHAR NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_change PRIMARY KEY (id), 
	CONSTRAINT fk_change_entry_id_entry FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "change" VALUES(1,'Old Bar','as found','disc','row:1','','C30',1);
CREATE TABLE crew_member (
	name VARCHAR NOT NULL, 
	skills JSON NOT NULL, 
	hours JSON NOT NULL, 
	here BOOLEAN NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_crew_member PRIMARY KEY (id), 
	CONSTRAINT uq_crew_member_name UNIQUE (name)
);
CREATE TABLE delivery (
	part VARCHAR NOT NULL, 
	days INTEGER NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_delivery PRIMARY KEY (id), 
	CONSTRAINT uq_delivery_part UNIQUE (part)
);
CREATE TABLE depth_offset (
	"row" INTEGER NOT NULL, 
	"offset" JSON NOT NULL, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, step JSON, spread JSON, digs INTEGER, middle DOUBLE, squares DOUBLE, 
	CONSTRAINT pk_depth_offset PRIMARY KEY (id), 
	CONSTRAINT fk_depth_offset_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE, 
	CONSTRAINT uq_depth_offset_planter_id_row UNIQUE (planter_id, "row")
);
INSERT INTO "depth_offset" VALUES(2,'{"value": 0.1, "unit": "inch"}',1,1,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE drive (
	group_name VARCHAR NOT NULL, 
	kind VARCHAR NOT NULL, 
	ratio DOUBLE NOT NULL, 
	driver JSON, 
	driven JSON, 
	rolling_circumference JSON, 
	slip DOUBLE, 
	least_speed JSON, 
	most_speed JSON, 
	displacement JSON, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_drive PRIMARY KEY (id), 
	CONSTRAINT fk_drive_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE, 
	CONSTRAINT uq_drive_planter_id_group_name UNIQUE (planter_id, group_name)
);
CREATE TABLE entry (
	"when" VARCHAR NOT NULL, 
	who VARCHAR NOT NULL, 
	why VARCHAR NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_entry PRIMARY KEY (id)
);
INSERT INTO "entry" VALUES('2025-04-18T08:00:00+00:00','Ada','begin',1);
CREATE TABLE field (
	name VARCHAR NOT NULL, 
	area JSON NOT NULL, 
	texture VARCHAR NOT NULL, 
	"where" VARCHAR NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, altitude JSON, run_length JSON, 
	CONSTRAINT pk_field PRIMARY KEY (id), 
	CONSTRAINT uq_field_name UNIQUE (name)
);
CREATE TABLE finding (
	proof_id INTEGER NOT NULL, 
	kind VARCHAR NOT NULL, 
	"row" INTEGER, 
	part VARCHAR NOT NULL, 
	what VARCHAR NOT NULL, 
	evidence VARCHAR NOT NULL, 
	advice JSON NOT NULL, 
	weight VARCHAR NOT NULL, 
	parts JSON NOT NULL, 
	state VARCHAR NOT NULL, 
	task BOOLEAN NOT NULL, 
	closed_by INTEGER, 
	acknowledged VARCHAR NOT NULL, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_finding PRIMARY KEY (id), 
	CONSTRAINT fk_finding_closed_by_proof FOREIGN KEY(closed_by) REFERENCES proof (id), 
	CONSTRAINT fk_finding_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE, 
	CONSTRAINT fk_finding_proof_id_proof FOREIGN KEY(proof_id) REFERENCES proof (id)
);
INSERT INTO "finding" VALUES(1,'wear inspection',2,'wiper','Wiper: replace','Wiper: not fine.','[["Replace the wiper.", "common practice, no source", "common practice", ""]]','work','[]','open',0,NULL,'',1,1);
CREATE TABLE flush (
	planter VARCHAR NOT NULL, 
	lot VARCHAR NOT NULL, 
	residual DOUBLE NOT NULL, 
	"limit" DOUBLE NOT NULL, 
	seeds DOUBLE NOT NULL, 
	row_feet DOUBLE NOT NULL, 
	acres DOUBLE NOT NULL, 
	measured BOOLEAN NOT NULL, 
	who VARCHAR NOT NULL, 
	"when" VARCHAR NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, pool DOUBLE, 
	CONSTRAINT pk_flush PRIMARY KEY (id), 
	CONSTRAINT uq_flush_planter_lot_when UNIQUE (planter, lot, "when")
);
CREATE TABLE job (
	name VARCHAR NOT NULL, 
	planter VARCHAR, 
	lateness_cost DOUBLE, 
	done BOOLEAN NOT NULL, 
	lot VARCHAR NOT NULL, 
	field VARCHAR, 
	speed JSON NOT NULL, 
	seed_rate JSON, 
	stand JSON, 
	emergence DOUBLE, 
	moisture VARCHAR NOT NULL, 
	tillage VARCHAR NOT NULL, 
	soil_temperature JSON, 
	row_spacing JSON, 
	first_day DATE, 
	last_day DATE, 
	area JSON, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, overlap DOUBLE, reserve DOUBLE, seed_at_both_ends BOOLEAN DEFAULT 0 NOT NULL, other_lots JSON DEFAULT '[]' NOT NULL, meter_error DOUBLE, 
	CONSTRAINT pk_job PRIMARY KEY (id), 
	CONSTRAINT uq_job_name UNIQUE (name)
);
INSERT INTO "job" VALUES('corn first',NULL,NULL,0,'K-1',NULL,'{"value": 5.0, "unit": "mile_per_hour"}',NULL,NULL,NULL,'moist','tilled',NULL,NULL,NULL,NULL,NULL,1,1,NULL,NULL,0,'[]',NULL);
CREATE TABLE job_fixing (
	job VARCHAR NOT NULL, 
	planter VARCHAR NOT NULL, 
	day DATE, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_job_fixing PRIMARY KEY (id), 
	CONSTRAINT uq_job_fixing_job UNIQUE (job)
);
CREATE TABLE load_reading (
	place VARCHAR NOT NULL, 
	setting JSON NOT NULL, 
	load JSON NOT NULL, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_load_reading PRIMARY KEY (id), 
	CONSTRAINT fk_load_reading_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE
);
CREATE TABLE lot (
	number VARCHAR NOT NULL, 
	crop VARCHAR NOT NULL, 
	name VARCHAR NOT NULL, 
	thousand_seed_mass JSON, 
	sieve JSON, 
	length JSON, 
	width JSON, 
	thickness JSON, 
	germination DOUBLE, 
	treatment VARCHAR NOT NULL, 
	treatment_name VARCHAR NOT NULL, 
	purity VARCHAR NOT NULL, 
	genetically_modified BOOLEAN NOT NULL, 
	package_seeds INTEGER, 
	package_mass JSON, 
	packages DOUBLE, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, bulk_density JSON, lubricant JSON, 
	CONSTRAINT pk_lot PRIMARY KEY (id), 
	CONSTRAINT uq_lot_number UNIQUE (number)
);
INSERT INTO "lot" VALUES('K-1','corn','','{"value": 300.0, "unit": "gram"}',NULL,NULL,NULL,NULL,0.95,'untreated','','commercial',0,NULL,NULL,NULL,1,1,NULL,NULL);
CREATE TABLE manual_value (
	crop VARCHAR NOT NULL, 
	setting VARCHAR NOT NULL, 
	planter VARCHAR, 
	part VARCHAR, 
	value JSON NOT NULL, 
	note VARCHAR NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_manual_value PRIMARY KEY (id)
);
CREATE TABLE meter (
	serial VARCHAR NOT NULL, 
	planter VARCHAR, 
	"row" INTEGER, 
	hub_zero JSON, 
	hours DOUBLE NOT NULL, 
	note VARCHAR NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_meter PRIMARY KEY (id), 
	CONSTRAINT uq_meter_serial UNIQUE (serial)
);
CREATE TABLE own_task (
	switch_id INTEGER NOT NULL, 
	name VARCHAR NOT NULL, 
	title VARCHAR NOT NULL, 
	work_place VARCHAR NOT NULL, 
	places JSON NOT NULL, 
	minutes_fixed JSON NOT NULL, 
	minutes_each JSON NOT NULL, 
	state VARCHAR NOT NULL, 
	tools JSON NOT NULL, 
	persons INTEGER NOT NULL, 
	"after" JSON NOT NULL, 
	"before" JSON NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_own_task PRIMARY KEY (id), 
	CONSTRAINT fk_own_task_switch_id_switch FOREIGN KEY(switch_id) REFERENCES switch (id) ON DELETE CASCADE, 
	CONSTRAINT uq_own_task_switch_id_name UNIQUE (switch_id, name)
);
INSERT INTO "own_task" VALUES(1,'chain','Grease the chain','drive','["planter:"]','{"value": 0.0, "unit": "minute"}','{"value": 0.0, "unit": "minute"}','any','[]',1,'[]','[]',1);
CREATE TABLE part (
	code VARCHAR NOT NULL, 
	name VARCHAR NOT NULL, 
	sort VARCHAR NOT NULL, 
	suits JSON NOT NULL, 
	cells INTEGER, 
	hole JSON, 
	cell_circle JSON, 
	seed_from JSON, 
	seed_to JSON, 
	note VARCHAR NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_part PRIMARY KEY (id), 
	CONSTRAINT uq_part_code UNIQUE (code)
);
CREATE TABLE photo (
	planter VARCHAR NOT NULL, 
	appraisal VARCHAR NOT NULL, 
	digest VARCHAR NOT NULL, 
	caption VARCHAR NOT NULL, 
	content BLOB NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_photo PRIMARY KEY (id), 
	CONSTRAINT uq_photo_planter_appraisal_digest UNIQUE (planter, appraisal, digest)
);
CREATE TABLE planter (
	name VARCHAR NOT NULL, 
	retired BOOLEAN NOT NULL, 
	rows INTEGER NOT NULL, 
	row_spacing JSON NOT NULL, 
	split_rows JSON NOT NULL, 
	depth_first JSON NOT NULL, 
	depth_step JSON NOT NULL, 
	depth_count INTEGER NOT NULL, 
	hub_spacing_step JSON NOT NULL, 
	fan_limit JSON, 
	sensors_per_controller INTEGER NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, tank_capacity JSON, wheel_track_rows JSON DEFAULT '[]' NOT NULL, twin_rows BOOLEAN DEFAULT 0 NOT NULL, 
	CONSTRAINT pk_planter PRIMARY KEY (id), 
	CONSTRAINT uq_planter_name UNIQUE (name)
);
INSERT INTO "planter" VALUES('Old Bar',0,2,'{"value": 30.0, "unit": "inch"}','[]','{"value": 0.5, "unit": "inch"}','{"value": 0.25, "unit": "inch"}',13,'{"value": 0.1, "unit": "millimeter"}',NULL,24,1,1,NULL,'[]',0);
CREATE TABLE position (
	scale VARCHAR NOT NULL, 
	number INTEGER NOT NULL, 
	name VARCHAR NOT NULL, 
	open_share DOUBLE, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_position PRIMARY KEY (id), 
	CONSTRAINT fk_position_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE, 
	CONSTRAINT uq_position_planter_id_scale_number UNIQUE (planter_id, scale, number)
);
INSERT INTO "position" VALUES('singulator',1,'half',0.5,1,1);
INSERT INTO "position" VALUES('singulator',2,'open',1.0,1,2);
INSERT INTO "position" VALUES('closing',1,'float',NULL,1,3);
CREATE TABLE price_list (
	name VARCHAR NOT NULL, 
	"on" DATE NOT NULL, 
	tax VARCHAR NOT NULL, 
	lines JSON NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_price_list PRIMARY KEY (id), 
	CONSTRAINT uq_price_list_name UNIQUE (name)
);
CREATE TABLE proof (
	kind VARCHAR NOT NULL, 
	taken VARCHAR NOT NULL, 
	who VARCHAR NOT NULL, 
	note VARCHAR NOT NULL, 
	lot VARCHAR, 
	meters JSON NOT NULL, 
	form INTEGER NOT NULL, 
	readings JSON NOT NULL, 
	settles JSON NOT NULL, 
	withdraws INTEGER, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_proof PRIMARY KEY (id), 
	CONSTRAINT fk_proof_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE, 
	CONSTRAINT fk_proof_withdraws_proof FOREIGN KEY(withdraws) REFERENCES proof (id)
);
INSERT INTO "proof" VALUES('wear inspection','2026-01-15T08:00:00+00:00','Ada','',NULL,'{}',1,'{"day": "2026-01-15", "rows": {"2": {"wiper": false}}}','[[2, "wiper"]]',NULL,1,1);
CREATE TABLE row_group (
	sort VARCHAR NOT NULL, 
	name VARCHAR NOT NULL, 
	rows JSON NOT NULL, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_row_group PRIMARY KEY (id), 
	CONSTRAINT fk_row_group_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE, 
	CONSTRAINT uq_row_group_planter_id_sort_name UNIQUE (planter_id, sort, name)
);
INSERT INTO "row_group" VALUES('fan','fan 1','[1, 2]',1,1);
CREATE TABLE season_rules (
	name VARCHAR NOT NULL, 
	begins DATE, 
	hours DOUBLE NOT NULL, 
	suitable DOUBLE NOT NULL, 
	efficiency DOUBLE NOT NULL, 
	move_minutes INTEGER NOT NULL, 
	near_minutes INTEGER NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_season_rules PRIMARY KEY (id), 
	CONSTRAINT uq_season_rules_name UNIQUE (name)
);
CREATE TABLE setting (
	position INTEGER NOT NULL, 
	"key" VARCHAR NOT NULL, 
	name VARCHAR NOT NULL, 
	kind VARCHAR NOT NULL, 
	scope VARCHAR NOT NULL, 
	work_place VARCHAR NOT NULL, 
	measure VARCHAR, 
	options JSON NOT NULL, 
	part_sort VARCHAR, 
	hint VARCHAR NOT NULL, 
	hidden BOOLEAN NOT NULL, 
	own BOOLEAN NOT NULL, 
	record_only BOOLEAN NOT NULL, 
	tolerance JSON, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_setting PRIMARY KEY (id), 
	CONSTRAINT uq_setting_key UNIQUE ("key")
);
INSERT INTO "setting" VALUES(0,'disc','Disc','part','row','meter',NULL,'[]','disc','',0,0,0,NULL,1,1);
CREATE TABLE setup (
	name VARCHAR NOT NULL, 
	saved VARCHAR NOT NULL, 
	who VARCHAR NOT NULL, 
	lot VARCHAR, 
	crop VARCHAR, 
	field VARCHAR, 
	note VARCHAR NOT NULL, 
	proved VARCHAR NOT NULL, 
	signed BOOLEAN NOT NULL, 
	withdrawn BOOLEAN NOT NULL, 
	seed_diameter JSON, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_setup PRIMARY KEY (id), 
	CONSTRAINT fk_setup_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE
);
INSERT INTO "setup" VALUES('Corn 25','2025-04-18T09:00:00+00:00','Ada','K-1','corn',NULL,'','good',1,0,NULL,1,1);
CREATE TABLE setup_cell (
	setup_id INTEGER NOT NULL, 
	setting VARCHAR NOT NULL, 
	place VARCHAR NOT NULL, 
	value JSON NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_setup_cell PRIMARY KEY (id), 
	CONSTRAINT fk_setup_cell_setup_id_setup FOREIGN KEY(setup_id) REFERENCES setup (id) ON DELETE CASCADE, 
	CONSTRAINT uq_setup_cell_setup_id_setting_place UNIQUE (setup_id, setting, place)
);
INSERT INTO "setup_cell" VALUES(1,'disc','row:1','"C30"',1);
CREATE TABLE shared_tool (
	name VARCHAR NOT NULL, 
	count INTEGER NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_shared_tool PRIMARY KEY (id), 
	CONSTRAINT uq_shared_tool_name UNIQUE (name)
);
CREATE TABLE shelf (
	part VARCHAR NOT NULL, 
	condition VARCHAR NOT NULL, 
	count INTEGER NOT NULL, 
	bin VARCHAR NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_shelf PRIMARY KEY (id), 
	CONSTRAINT uq_shelf_part_condition UNIQUE (part, condition)
);
CREATE TABLE standard_time (
	task VARCHAR NOT NULL, 
	fixed JSON NOT NULL, 
	"each" JSON NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_standard_time PRIMARY KEY (id), 
	CONSTRAINT uq_standard_time_task UNIQUE (task)
);
CREATE TABLE switch (
	started VARCHAR NOT NULL, 
	state VARCHAR NOT NULL, 
	ended VARCHAR, 
	lot VARCHAR NOT NULL, 
	field VARCHAR, 
	speed JSON NOT NULL, 
	seed_rate JSON, 
	stand JSON, 
	emergence DOUBLE, 
	moisture VARCHAR NOT NULL, 
	tillage VARCHAR NOT NULL, 
	soil_temperature JSON, 
	row_spacing JSON, 
	first_day DATE, 
	last_day DATE, 
	area JSON, 
	planter_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, overlap DOUBLE, reserve DOUBLE, seed_at_both_ends BOOLEAN DEFAULT 0 NOT NULL, other_lots JSON DEFAULT '[]' NOT NULL, meter_error DOUBLE, 
	CONSTRAINT pk_switch PRIMARY KEY (id), 
	CONSTRAINT fk_switch_planter_id_planter FOREIGN KEY(planter_id) REFERENCES planter (id) ON DELETE CASCADE
);
INSERT INTO "switch" VALUES('2025-05-04T07:00:00+00:00','open',NULL,'K-1',NULL,'{"value": 5.0, "unit": "mile_per_hour"}',NULL,NULL,NULL,'moist','tilled',NULL,NULL,NULL,NULL,NULL,1,1,NULL,NULL,0,'[]',NULL);
CREATE TABLE task_split (
	switch_id INTEGER NOT NULL, 
	family VARCHAR NOT NULL, 
	name VARCHAR NOT NULL, 
	places JSON NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_task_split PRIMARY KEY (id), 
	CONSTRAINT fk_task_split_switch_id_switch FOREIGN KEY(switch_id) REFERENCES switch (id) ON DELETE CASCADE, 
	CONSTRAINT uq_task_split_switch_id_family_name UNIQUE (switch_id, family, name)
);
CREATE TABLE tick (
	switch_id INTEGER NOT NULL, 
	task VARCHAR NOT NULL, 
	place VARCHAR NOT NULL, 
	who VARCHAR NOT NULL, 
	"when" VARCHAR NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_tick PRIMARY KEY (id), 
	CONSTRAINT fk_tick_switch_id_switch FOREIGN KEY(switch_id) REFERENCES switch (id) ON DELETE CASCADE, 
	CONSTRAINT uq_tick_switch_id_task_place UNIQUE (switch_id, task, place)
);
INSERT INTO "tick" VALUES(1,'meter','row:1','Ada','2025-05-04T07:30:00+00:00',1);
INSERT INTO "tick" VALUES(1,'clean_tank.different_crop/K-1','tank:tank 1','Ada','2025-05-04T07:40:00+00:00',2);
INSERT INTO "tick" VALUES(1,'meter.different_crop+treated_to_untreated/disc+brush+K+1','row:2','Ada','2025-05-04T07:40:00+00:00',3);
INSERT INTO "tick" VALUES(1,'clean_floor.different_crop|other_variety','planter','Ada','2025-05-04T07:40:00+00:00',4);
CREATE TABLE wear_limit (
	part VARCHAR NOT NULL, 
	applies VARCHAR NOT NULL, 
	low JSON, 
	high JSON, 
	new JSON, 
	note VARCHAR NOT NULL, 
	version INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	CONSTRAINT pk_wear_limit PRIMARY KEY (id), 
	CONSTRAINT uq_wear_limit_part_applies UNIQUE (part, applies)
);
CREATE INDEX ix_change_entry_id ON change (entry_id);
CREATE INDEX ix_change_planter ON change (planter);
CREATE UNIQUE INDEX uq_setup_planter_id_name ON setup (planter_id, name) WHERE NOT withdrawn;
CREATE INDEX ix_proof_planter_id_kind ON proof (planter_id, kind);
CREATE INDEX ix_finding_planter_id_state ON finding (planter_id, state);
COMMIT;
