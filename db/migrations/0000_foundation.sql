CREATE TABLE `assumption_override` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`assumption_id` text NOT NULL,
	`value` real NOT NULL,
	`low` real NOT NULL,
	`high` real NOT NULL,
	`reason` text NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	`ended_at_ms` integer,
	`ended_by` text,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "assumption_override_order" CHECK("assumption_override"."low" <= "assumption_override"."value" and "assumption_override"."value" <= "assumption_override"."high")
);
--> statement-breakpoint
CREATE INDEX `assumption_override_current` ON `assumption_override` (`building_id`,`assumption_id`,`ended_at_ms`);--> statement-breakpoint
CREATE TABLE `building` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`time_zone` text NOT NULL,
	`currency` text NOT NULL,
	`temperature_unit` text NOT NULL,
	`area_unit` text NOT NULL,
	`floor_area_m2` real NOT NULL,
	`system_type` text NOT NULL,
	`has_economizer` integer DEFAULT true NOT NULL,
	`heating_fuel` text DEFAULT 'gas' NOT NULL,
	`electricity_price_kind` text NOT NULL,
	`electricity_price_per_kwh` real NOT NULL,
	`demand_price_per_kw` real,
	`demand_months` integer,
	`heat_price_per_kwh` real,
	`complaint_hours` real,
	`labour_price_per_hour` real,
	`target_zone_air_temp_c` real DEFAULT 23 NOT NULL,
	`mains_voltage_v` real DEFAULT 120 NOT NULL,
	`created_at_ms` integer NOT NULL,
	`updated_at_ms` integer NOT NULL,
	CONSTRAINT "building_area" CHECK("building"."floor_area_m2" > 0),
	CONSTRAINT "building_price" CHECK("building"."electricity_price_per_kwh" >= 0),
	CONSTRAINT "building_demand" CHECK("building"."demand_price_per_kw" is null or ("building"."electricity_price_kind" = 'marginal' and "building"."demand_price_per_kw" >= 0)),
	CONSTRAINT "building_target" CHECK("building"."target_zone_air_temp_c" between 15 and 32)
);
--> statement-breakpoint
CREATE TABLE `holiday` (
	`building_id` integer NOT NULL,
	`date` text NOT NULL,
	`name` text DEFAULT '' NOT NULL,
	PRIMARY KEY(`building_id`, `date`),
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `occupied_interval` (
	`building_id` integer NOT NULL,
	`weekday` integer NOT NULL,
	`start_minute` integer NOT NULL,
	`end_minute` integer NOT NULL,
	PRIMARY KEY(`building_id`, `weekday`, `start_minute`),
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "occupied_weekday" CHECK("occupied_interval"."weekday" between 1 and 7),
	CONSTRAINT "occupied_order" CHECK("occupied_interval"."start_minute" >= 0 and "occupied_interval"."end_minute" <= 1440 and "occupied_interval"."start_minute" < "occupied_interval"."end_minute")
);
--> statement-breakpoint
CREATE TABLE `comfort_link` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`zone_id` integer NOT NULL,
	`desk_id` integer,
	`token` text NOT NULL,
	`created_at_ms` integer NOT NULL,
	`created_by` text NOT NULL,
	`revoked_at_ms` integer,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`zone_id`) REFERENCES `zone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`desk_id`) REFERENCES `desk`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `comfort_link_token` ON `comfort_link` (`token`);--> statement-breakpoint
CREATE TABLE `comfort_report` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`zone_id` integer NOT NULL,
	`desk_id` integer,
	`link_id` integer,
	`reported_at_ms` integer NOT NULL,
	`thermal_sensation` integer NOT NULL,
	`preference` text NOT NULL,
	`heater_in_use` integer,
	`fan_in_use` integer,
	`draught` integer,
	`note` text DEFAULT '' NOT NULL,
	`submission_id` text,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`zone_id`) REFERENCES `zone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`desk_id`) REFERENCES `desk`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`link_id`) REFERENCES `comfort_link`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "comfort_report_vote" CHECK("comfort_report"."thermal_sensation" between -3 and 3)
);
--> statement-breakpoint
CREATE INDEX `comfort_report_zone_time` ON `comfort_report` (`zone_id`,`reported_at_ms`);--> statement-breakpoint
CREATE INDEX `comfort_report_building_time` ON `comfort_report` (`building_id`,`reported_at_ms`);--> statement-breakpoint
CREATE UNIQUE INDEX `comfort_report_submission` ON `comfort_report` (`submission_id`);--> statement-breakpoint
CREATE TABLE `device` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`zone_id` integer NOT NULL,
	`desk_id` integer,
	`kind` text NOT NULL,
	`device_class` text NOT NULL,
	`label` text NOT NULL,
	`has_thermostat` integer DEFAULT false NOT NULL,
	`found_on` text NOT NULL,
	`retired_on` text,
	`note` text DEFAULT '' NOT NULL,
	`created_at_ms` integer NOT NULL,
	`updated_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`zone_id`) REFERENCES `zone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`desk_id`) REFERENCES `desk`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `device_label` ON `device` (`building_id`,`label`);--> statement-breakpoint
CREATE TABLE `device_setting` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`device_id` integer NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`basis` text NOT NULL,
	`current_a` real,
	`current_resolution_a` real,
	`voltage_v` real,
	`voltage_measured` integer DEFAULT false NOT NULL,
	`power_factor` real,
	`power_w` real,
	`hours_per_year` real DEFAULT 0 NOT NULL,
	`duty_fraction` real DEFAULT 1 NOT NULL,
	FOREIGN KEY (`device_id`) REFERENCES `device`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "setting_current" CHECK("device_setting"."current_a" is null or "device_setting"."current_a" between 0 and 100),
	CONSTRAINT "setting_voltage" CHECK("device_setting"."voltage_v" is null or "device_setting"."voltage_v" between 50 and 480),
	CONSTRAINT "setting_power_factor" CHECK("device_setting"."power_factor" is null or ("device_setting"."power_factor" > 0 and "device_setting"."power_factor" <= 1)),
	CONSTRAINT "setting_power" CHECK("device_setting"."power_w" is null or "device_setting"."power_w" between 0 and 10000),
	CONSTRAINT "setting_hours" CHECK("device_setting"."hours_per_year" between 0 and 8784),
	CONSTRAINT "setting_duty" CHECK("device_setting"."duty_fraction" between 0 and 1)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `device_setting_position` ON `device_setting` (`device_id`,`position`);--> statement-breakpoint
CREATE TABLE `result_cache` (
	`building_id` integer NOT NULL,
	`subject` text NOT NULL,
	`fingerprint` text NOT NULL,
	`result` text NOT NULL,
	`computed_at_ms` integer NOT NULL,
	PRIMARY KEY(`building_id`, `subject`),
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `import_row` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`run_id` integer NOT NULL,
	`line` integer NOT NULL,
	`fate` text NOT NULL,
	`code` text NOT NULL,
	`excerpt` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `import_run`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `import_row_run` ON `import_row` (`run_id`);--> statement-breakpoint
CREATE TABLE `import_run` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`kind` text NOT NULL,
	`file_name` text NOT NULL,
	`sha256` text NOT NULL,
	`byte_count` integer NOT NULL,
	`state` text NOT NULL,
	`message` text DEFAULT '' NOT NULL,
	`rows_in_file` integer DEFAULT 0 NOT NULL,
	`rows_accepted` integer DEFAULT 0 NOT NULL,
	`rows_repaired` integer DEFAULT 0 NOT NULL,
	`rows_held_back` integer DEFAULT 0 NOT NULL,
	`rows_rejected` integer DEFAULT 0 NOT NULL,
	`rows_ignored` integer DEFAULT 0 NOT NULL,
	`samples_added` integer DEFAULT 0 NOT NULL,
	`samples_changed` integer DEFAULT 0 NOT NULL,
	`samples_same` integer DEFAULT 0 NOT NULL,
	`inspection` text,
	`answers` text,
	`started_at_ms` integer NOT NULL,
	`finished_at_ms` integer,
	`started_by` text NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `import_run_building` ON `import_run` (`building_id`,`started_at_ms`);--> statement-breakpoint
CREATE INDEX `import_run_sha` ON `import_run` (`building_id`,`sha256`);--> statement-breakpoint
CREATE TABLE `point` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`external_name` text NOT NULL,
	`kind` text NOT NULL,
	`zone_id` integer,
	`file_unit` text NOT NULL,
	`sampling` text NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`zone_id`) REFERENCES `zone`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `point_name` ON `point` (`building_id`,`external_name`);--> statement-breakpoint
CREATE INDEX `point_zone` ON `point` (`zone_id`);--> statement-breakpoint
CREATE TABLE `weather_year` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`file_name` text NOT NULL,
	`format` text NOT NULL,
	`sha256` text NOT NULL,
	`station` text NOT NULL,
	`latitude` real NOT NULL,
	`longitude` real NOT NULL,
	`utc_offset_hours` real NOT NULL,
	`dry_bulb_tenths_c` blob NOT NULL,
	`imported_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `weather_year_building` ON `weather_year` (`building_id`);--> statement-breakpoint
CREATE TABLE `desk` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`zone_id` integer NOT NULL,
	`code` text NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`zone_id`) REFERENCES `zone`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `desk_code` ON `desk` (`building_id`,`code`);--> statement-breakpoint
CREATE TABLE `zone` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`code` text NOT NULL,
	`name` text DEFAULT '' NOT NULL,
	`floor` text DEFAULT '' NOT NULL,
	`floor_area_m2` real,
	`air_handler` text DEFAULT '' NOT NULL,
	`design_airflow_m3ps` real,
	`minimum_airflow_m3ps` real,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "zone_area" CHECK("zone"."floor_area_m2" is null or "zone"."floor_area_m2" > 0),
	CONSTRAINT "zone_design_airflow" CHECK("zone"."design_airflow_m3ps" is null or "zone"."design_airflow_m3ps" > 0),
	CONSTRAINT "zone_minimum_airflow" CHECK("zone"."minimum_airflow_m3ps" is null or "zone"."minimum_airflow_m3ps" >= 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `zone_code` ON `zone` (`building_id`,`code`);