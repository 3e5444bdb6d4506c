CREATE TABLE `collector_token` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`collector` text NOT NULL,
	`token_hash` text NOT NULL,
	`created_at_ms` integer NOT NULL,
	`created_by` text NOT NULL,
	`last_used_at_ms` integer,
	`revoked_at_ms` integer,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `collector_token_hash` ON `collector_token` (`token_hash`);--> statement-breakpoint
CREATE INDEX `collector_token_building` ON `collector_token` (`building_id`);--> statement-breakpoint
CREATE TABLE `upload` (
	`id` text PRIMARY KEY NOT NULL,
	`building_id` integer NOT NULL,
	`file_name` text NOT NULL,
	`kind` text NOT NULL,
	`total_bytes` integer NOT NULL,
	`received_bytes` integer DEFAULT 0 NOT NULL,
	`last_modified_ms` integer,
	`declared_sha256` text,
	`sha256` text,
	`state` text NOT NULL,
	`run_id` integer,
	`started_at_ms` integer NOT NULL,
	`started_by` text NOT NULL,
	`last_part_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`run_id`) REFERENCES `import_run`(`id`) ON UPDATE no action ON DELETE set null,
	CONSTRAINT "upload_bytes" CHECK("upload"."total_bytes" > 0 and "upload"."received_bytes" between 0 and "upload"."total_bytes")
);
--> statement-breakpoint
CREATE INDEX `upload_building` ON `upload` (`building_id`,`state`);