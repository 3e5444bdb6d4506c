CREATE TABLE `import_run_profile` (
	`run_id` integer NOT NULL,
	`profile_version_id` integer NOT NULL,
	`role` text NOT NULL,
	`remark` text DEFAULT '' NOT NULL,
	PRIMARY KEY(`run_id`, `role`),
	FOREIGN KEY (`run_id`) REFERENCES `import_run`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`profile_version_id`) REFERENCES `mapping_profile_version`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `import_run_profile_version` ON `import_run_profile` (`profile_version_id`);--> statement-breakpoint
CREATE TABLE `mapping_draft` (
	`building_id` integer PRIMARY KEY NOT NULL,
	`draft` text NOT NULL,
	`updated_at_ms` integer NOT NULL,
	`updated_by` text NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `mapping_profile` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`name` text NOT NULL,
	`retired_at_ms` integer,
	`retired_by` text,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "mapping_profile_named" CHECK(length(trim("mapping_profile"."name")) > 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `mapping_profile_name` ON `mapping_profile` (`building_id`,`name`) WHERE "mapping_profile"."retired_at_ms" is null;--> statement-breakpoint
CREATE TABLE `mapping_profile_version` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`profile_id` integer NOT NULL,
	`version` integer NOT NULL,
	`content` text NOT NULL,
	`file_name` text NOT NULL,
	`made_at_ms` integer NOT NULL,
	`made_by` text NOT NULL,
	FOREIGN KEY (`profile_id`) REFERENCES `mapping_profile`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `mapping_profile_version_number` ON `mapping_profile_version` (`profile_id`,`version`);