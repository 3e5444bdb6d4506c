CREATE TABLE `report_answer_mail` (
	`event_id` integer PRIMARY KEY NOT NULL,
	`building_id` integer NOT NULL,
	`state` text DEFAULT 'waiting' NOT NULL,
	`failures` integer DEFAULT 0 NOT NULL,
	`next_try_at_ms` integer NOT NULL,
	`last_fault` text DEFAULT '' NOT NULL,
	`settled_at_ms` integer,
	FOREIGN KEY (`event_id`) REFERENCES `comfort_report_event`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `report_answer_mail_state` ON `report_answer_mail` (`state`,`next_try_at_ms`);--> statement-breakpoint
CREATE TABLE `report_mail_recipient` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`address` text NOT NULL,
	`zone_ids` text,
	`daily_hour` integer,
	`last_report_id` integer NOT NULL,
	`failures` integer DEFAULT 0 NOT NULL,
	`next_try_at_ms` integer DEFAULT 0 NOT NULL,
	`last_fault` text DEFAULT '' NOT NULL,
	`given_up_at_ms` integer,
	`last_sent_at_ms` integer,
	`created_by` text NOT NULL,
	`created_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "report_mail_recipient_hour" CHECK("report_mail_recipient"."daily_hour" between 0 and 23)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `report_mail_recipient_address` ON `report_mail_recipient` (`building_id`,`address`);--> statement-breakpoint
CREATE TABLE `report_mail_server` (
	`building_id` integer PRIMARY KEY NOT NULL,
	`host` text NOT NULL,
	`port` integer NOT NULL,
	`security` text NOT NULL,
	`user` text DEFAULT '' NOT NULL,
	`password` text DEFAULT '' NOT NULL,
	`from_address` text NOT NULL,
	`site_address` text NOT NULL,
	`names_desk` integer DEFAULT false NOT NULL,
	`repeats_note` integer DEFAULT false NOT NULL,
	`changed_by` text NOT NULL,
	`changed_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "report_mail_server_port" CHECK("report_mail_server"."port" between 1 and 65535)
);
