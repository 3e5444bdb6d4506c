CREATE TABLE `device_photo` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`device_id` integer NOT NULL,
	`inspection_item_id` integer,
	`sha256` text NOT NULL,
	`byte_count` integer NOT NULL,
	`width_px` integer NOT NULL,
	`height_px` integer NOT NULL,
	`caption` text DEFAULT '' NOT NULL,
	`entered_at_ms` integer NOT NULL,
	`entered_by` text NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`device_id`) REFERENCES `device`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`inspection_item_id`) REFERENCES `inspection_item`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `device_photo_device` ON `device_photo` (`device_id`);--> statement-breakpoint
CREATE TABLE `field_setting` (
	`building_id` integer PRIMARY KEY NOT NULL,
	`plug_log_raw_days` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "field_setting_days" CHECK("field_setting"."plug_log_raw_days" between 0 and 365)
);
--> statement-breakpoint
CREATE TABLE `plug_log` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`device_id` integer NOT NULL,
	`file_name` text NOT NULL,
	`sha256` text NOT NULL,
	`byte_count` integer NOT NULL,
	`from_ms` integer NOT NULL,
	`to_ms` integer NOT NULL,
	`energy_kwh` real NOT NULL,
	`figures` text NOT NULL,
	`stands_from` text,
	`stands_to` text,
	`imported_at_ms` integer NOT NULL,
	`imported_by` text NOT NULL,
	`reviewed_at_ms` integer,
	`reviewed_by` text,
	`raw_deleted_at_ms` integer,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`device_id`) REFERENCES `device`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "plug_log_span" CHECK("plug_log"."from_ms" < "plug_log"."to_ms"),
	CONSTRAINT "plug_log_energy" CHECK("plug_log"."energy_kwh" >= 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `plug_log_once` ON `plug_log` (`device_id`,`sha256`);--> statement-breakpoint
CREATE INDEX `plug_log_raw` ON `plug_log` (`raw_deleted_at_ms`,`imported_at_ms`);--> statement-breakpoint
CREATE TABLE `register_import` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`file_name` text NOT NULL,
	`sha256` text NOT NULL,
	`byte_count` integer NOT NULL,
	`mapping` text,
	`import_run_id` integer,
	`received_at_ms` integer NOT NULL,
	`received_by` text NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`import_run_id`) REFERENCES `import_run`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE INDEX `register_import_building` ON `register_import` (`building_id`,`received_at_ms`);--> statement-breakpoint
CREATE TABLE `walk` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`started_at_ms` integer NOT NULL,
	`started_by` text NOT NULL,
	`ended_at_ms` integer,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `walk_building` ON `walk` (`building_id`,`started_at_ms`);--> statement-breakpoint
CREATE TABLE `walk_entry` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`walk_id` integer NOT NULL,
	`client_id` text NOT NULL,
	`desk_id` integer NOT NULL,
	`kind` text NOT NULL,
	`device_id` integer,
	`made_at_ms` integer NOT NULL,
	`received_at_ms` integer NOT NULL,
	`entered_by` text NOT NULL,
	FOREIGN KEY (`walk_id`) REFERENCES `walk`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`desk_id`) REFERENCES `desk`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`device_id`) REFERENCES `device`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE UNIQUE INDEX `walk_entry_client` ON `walk_entry` (`client_id`);--> statement-breakpoint
CREATE INDEX `walk_entry_desk` ON `walk_entry` (`walk_id`,`desk_id`);