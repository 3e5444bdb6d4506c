CREATE TABLE `report_webhook` (
	`building_id` integer PRIMARY KEY NOT NULL,
	`url` text NOT NULL,
	`secret` text NOT NULL,
	`last_report_id` integer NOT NULL,
	`failures` integer DEFAULT 0 NOT NULL,
	`next_try_at_ms` integer DEFAULT 0 NOT NULL,
	`last_fault` text DEFAULT '' NOT NULL,
	`last_taken_at_ms` integer,
	`created_by` text NOT NULL,
	`created_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
