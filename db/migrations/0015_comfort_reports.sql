CREATE TABLE `comfort_report_event` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`report_id` integer NOT NULL,
	`at_ms` integer NOT NULL,
	`by` text NOT NULL,
	`state` text,
	`action` text,
	`acted_at_ms` integer,
	`note` text DEFAULT '' NOT NULL,
	`answer` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`report_id`) REFERENCES `comfort_report`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `comfort_report_event_report` ON `comfort_report_event` (`report_id`,`id`);--> statement-breakpoint
CREATE TABLE `held_report` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`link_id` integer NOT NULL,
	`held_at_ms` integer NOT NULL,
	`follow_token` text NOT NULL,
	`submission_id` text,
	`sent` text NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`link_id`) REFERENCES `comfort_link`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `held_report_building_time` ON `held_report` (`building_id`,`held_at_ms`);--> statement-breakpoint
CREATE INDEX `held_report_link_time` ON `held_report` (`link_id`,`held_at_ms`);--> statement-breakpoint
CREATE UNIQUE INDEX `held_report_submission` ON `held_report` (`submission_id`);--> statement-breakpoint
CREATE UNIQUE INDEX `held_report_follow` ON `held_report` (`follow_token`);--> statement-breakpoint
CREATE TABLE `report_retention` (
	`building_id` integer PRIMARY KEY NOT NULL,
	`reply_address_days` integer NOT NULL,
	`note_days` integer NOT NULL,
	`changed_by` text NOT NULL,
	`changed_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "report_retention_reply" CHECK("report_retention"."reply_address_days" between 0 and 365),
	CONSTRAINT "report_retention_note" CHECK("report_retention"."note_days" between 1 and 1095)
);
--> statement-breakpoint
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
--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `sun` integer;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `dry_air` integer;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `since_when` text;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `body_parts` text;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `reply_address` text;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `language` text DEFAULT 'en' NOT NULL;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `origin` text DEFAULT 'link' NOT NULL;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `entered_by` text;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `follow_token` text;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `state` text DEFAULT 'received' NOT NULL;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `answered_at_ms` integer;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `closed_at_ms` integer;--> statement-breakpoint
CREATE INDEX `comfort_report_link_time` ON `comfort_report` (`link_id`,`reported_at_ms`);--> statement-breakpoint
CREATE INDEX `comfort_report_building_state_time` ON `comfort_report` (`building_id`,`state`,`reported_at_ms`);--> statement-breakpoint
CREATE UNIQUE INDEX `comfort_report_follow` ON `comfort_report` (`follow_token`);