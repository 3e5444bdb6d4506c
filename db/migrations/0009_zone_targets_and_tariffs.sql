CREATE TABLE `tariff` (
	`building_id` integer PRIMARY KEY NOT NULL,
	`energy_kind` text NOT NULL,
	`periods` text NOT NULL,
	`blocks` text NOT NULL,
	`bills` text,
	`ratchet_fraction` real,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
ALTER TABLE `zone` ADD `target_zone_air_temp_c` real;--> statement-breakpoint
ALTER TABLE `zone` ADD `fix_in_progress` text DEFAULT '' NOT NULL;