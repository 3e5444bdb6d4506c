CREATE TABLE `branch_circuit` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`panel` text NOT NULL,
	`circuit` text NOT NULL,
	`leg` text DEFAULT '' NOT NULL,
	`breaker_rating_a` real,
	`voltage_v` real,
	`receptacle_rating_a` real,
	`wiring` text DEFAULT 'radial' NOT NULL,
	`multi_outlet` integer DEFAULT true NOT NULL,
	`listed_for_100_percent` integer DEFAULT false NOT NULL,
	`base_continuous_a` real,
	`base_non_continuous_a` real,
	`base_load_note` text DEFAULT '' NOT NULL,
	`shared_neutral` integer,
	`rule_set` text NOT NULL,
	`trip_note` text DEFAULT '' NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`created_at_ms` integer NOT NULL,
	`updated_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "branch_circuit_breaker" CHECK("branch_circuit"."breaker_rating_a" is null or "branch_circuit"."breaker_rating_a" between 1 and 200),
	CONSTRAINT "branch_circuit_voltage" CHECK("branch_circuit"."voltage_v" is null or "branch_circuit"."voltage_v" between 50 and 480),
	CONSTRAINT "branch_circuit_receptacle" CHECK("branch_circuit"."receptacle_rating_a" is null or "branch_circuit"."receptacle_rating_a" between 1 and 100),
	CONSTRAINT "branch_circuit_base" CHECK(coalesce("branch_circuit"."base_continuous_a", 0) >= 0 and coalesce("branch_circuit"."base_non_continuous_a", 0) >= 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `branch_circuit_name` ON `branch_circuit` (`building_id`,`panel`,`circuit`);--> statement-breakpoint
CREATE TABLE `device_control` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`device_id` integer NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`effect` text NOT NULL,
	`low_end_w` real,
	`high_end_w` real,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`device_id`) REFERENCES `device`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "device_control_power" CHECK(coalesce("device_control"."low_end_w", 0) between 0 and 10000 and coalesce("device_control"."high_end_w", 0) between 0 and 10000)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `device_control_position` ON `device_control` (`device_id`,`position`);--> statement-breakpoint
CREATE TABLE `device_event` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`device_id` integer NOT NULL,
	`status` text NOT NULL,
	`on_date` text NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	FOREIGN KEY (`device_id`) REFERENCES `device`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `device_event_device` ON `device_event` (`device_id`,`on_date`,`id`);--> statement-breakpoint
CREATE TABLE `inspection` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`device_id` integer NOT NULL,
	`inspected_on` text NOT NULL,
	`checklist` text NOT NULL,
	`next_due_on` text,
	`note` text DEFAULT '' NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	FOREIGN KEY (`device_id`) REFERENCES `device`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `inspection_device` ON `inspection` (`device_id`,`inspected_on`,`id`);--> statement-breakpoint
CREATE TABLE `inspection_item` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`inspection_id` integer NOT NULL,
	`item_id` text NOT NULL,
	`severity` text NOT NULL,
	`outcome` text NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`due_on` text,
	`corrected_on` text,
	`corrected_by` text,
	`correction_note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`inspection_id`) REFERENCES `inspection`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "inspection_item_corrected" CHECK("inspection_item"."corrected_on" is null or "inspection_item"."outcome" = 'fail')
);
--> statement-breakpoint
CREATE UNIQUE INDEX `inspection_item_once` ON `inspection_item` (`inspection_id`,`item_id`);--> statement-breakpoint
ALTER TABLE `device` ADD `status` text DEFAULT 'found' NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `make` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `model` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `date_code` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `nameplate_w` real;--> statement-breakpoint
ALTER TABLE `device` ADD `nameplate_a` real;--> statement-breakpoint
ALTER TABLE `device` ADD `nameplate_voltage_v` real;--> statement-breakpoint
ALTER TABLE `device` ADD `owner_contact` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `circuit_id` integer REFERENCES branch_circuit(id);--> statement-breakpoint
ALTER TABLE `device` ADD `circuit_mapping` text DEFAULT 'assumed' NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `outlet_kind` text DEFAULT 'unknown' NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `outlet_label` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `is_fastened` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `device` ADD `longest_run_hours` real;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `raw_reading_a` real;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `clamp_turns` integer DEFAULT 1 NOT NULL;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `meter_name` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `meter_accuracy_pct` real;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `meter_accuracy_counts` integer;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `is_true_rms` integer;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `open_voltage_v` real;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `nameplate_w` real;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `fan_speed` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `use_basis` text DEFAULT 'entered' NOT NULL;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `hours_per_day` real;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `days_per_year` real;--> statement-breakpoint
ALTER TABLE `device_setting` ADD `use_note` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `desk` ADD `floor` text DEFAULT '' NOT NULL;