CREATE TABLE `proposal` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`title` text NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`season_from_month` integer NOT NULL,
	`season_to_month` integer NOT NULL,
	`from_minute` integer NOT NULL,
	`to_minute` integer NOT NULL,
	`investment_minor` integer DEFAULT 0 NOT NULL,
	`plan` text NOT NULL,
	`chosen_position` integer DEFAULT 0 NOT NULL,
	`ventilation_engineer` text,
	`ventilation_checked_on` text,
	`ventilation_note` text DEFAULT '' NOT NULL,
	`created_by` text NOT NULL,
	`created_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "proposal_title" CHECK(length("proposal"."title") > 0),
	CONSTRAINT "proposal_season" CHECK("proposal"."season_from_month" between 1 and 12 and "proposal"."season_to_month" between 1 and 12),
	CONSTRAINT "proposal_hours" CHECK("proposal"."from_minute" >= 0 and "proposal"."from_minute" < "proposal"."to_minute" and "proposal"."to_minute" <= 1440),
	CONSTRAINT "proposal_investment" CHECK("proposal"."investment_minor" >= 0),
	CONSTRAINT "proposal_check" CHECK(("proposal"."ventilation_engineer" is null) = ("proposal"."ventilation_checked_on" is null))
);
--> statement-breakpoint
CREATE INDEX `proposal_building` ON `proposal` (`building_id`,`id`);--> statement-breakpoint
CREATE TABLE `proposal_event` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`proposal_id` integer NOT NULL,
	`status` text NOT NULL,
	`comment` text DEFAULT '' NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	FOREIGN KEY (`proposal_id`) REFERENCES `proposal`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `proposal_event_proposal` ON `proposal_event` (`proposal_id`,`id`);--> statement-breakpoint
CREATE TABLE `proposal_issue` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`proposal_id` integer NOT NULL,
	`copy` text NOT NULL,
	`issued_by` text NOT NULL,
	`issued_at_ms` integer NOT NULL,
	FOREIGN KEY (`proposal_id`) REFERENCES `proposal`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `proposal_issue_proposal` ON `proposal_issue` (`proposal_id`,`id`);--> statement-breakpoint
CREATE TABLE `proposal_lever` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`variant_id` integer NOT NULL,
	`zone_id` integer NOT NULL,
	`lever` text NOT NULL,
	`amount` real NOT NULL,
	FOREIGN KEY (`variant_id`) REFERENCES `proposal_variant`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`zone_id`) REFERENCES `zone`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "proposal_lever_amount" CHECK("proposal_lever"."amount" between 0 and 100)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `proposal_lever_once` ON `proposal_lever` (`variant_id`,`zone_id`,`lever`);--> statement-breakpoint
CREATE TABLE `proposal_variant` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`proposal_id` integer NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	FOREIGN KEY (`proposal_id`) REFERENCES `proposal`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "proposal_variant_four" CHECK("proposal_variant"."position" between 0 and 3)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `proposal_variant_position` ON `proposal_variant` (`proposal_id`,`position`);--> statement-breakpoint
CREATE TABLE `setpoint_change` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`zone_id` integer NOT NULL,
	`proposal_id` integer,
	`setting` text NOT NULL,
	`origin` text NOT NULL,
	`decision` text NOT NULL,
	`at_utc_seconds` integer NOT NULL,
	`from_value` real NOT NULL,
	`to_value` real NOT NULL,
	`changed_by` text DEFAULT '' NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`zone_id`) REFERENCES `zone`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`proposal_id`) REFERENCES `proposal`(`id`) ON UPDATE no action ON DELETE set null,
	CONSTRAINT "setpoint_change_moves" CHECK("setpoint_change"."from_value" <> "setpoint_change"."to_value")
);
--> statement-breakpoint
CREATE UNIQUE INDEX `setpoint_change_once` ON `setpoint_change` (`zone_id`,`setting`,`at_utc_seconds`);--> statement-breakpoint
CREATE INDEX `setpoint_change_building` ON `setpoint_change` (`building_id`,`at_utc_seconds`);--> statement-breakpoint
CREATE TABLE `verification_plan` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`proposal_id` integer NOT NULL,
	`method` text NOT NULL,
	`before_from` text NOT NULL,
	`before_to` text NOT NULL,
	`after_from` text NOT NULL,
	`after_to` text NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	FOREIGN KEY (`proposal_id`) REFERENCES `proposal`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "verification_plan_windows" CHECK("verification_plan"."before_from" <= "verification_plan"."before_to" and "verification_plan"."after_from" <= "verification_plan"."after_to" and "verification_plan"."before_to" < "verification_plan"."after_from")
);
--> statement-breakpoint
CREATE UNIQUE INDEX `verification_plan_proposal` ON `verification_plan` (`proposal_id`);--> statement-breakpoint
CREATE TABLE `verification_result` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`proposal_id` integer NOT NULL,
	`verdict` text NOT NULL,
	`result` text NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	FOREIGN KEY (`proposal_id`) REFERENCES `proposal`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `verification_result_proposal` ON `verification_result` (`proposal_id`,`id`);