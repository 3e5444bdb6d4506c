CREATE TABLE `verdict_note` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`zone_id` integer NOT NULL,
	`stance` text NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`verdict` text NOT NULL,
	`causes` text NOT NULL,
	`data_state` text NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at_ms` integer NOT NULL,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`zone_id`) REFERENCES `zone`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "verdict_note_says_something" CHECK("verdict_note"."stance" = 'confirmed' or length("verdict_note"."note") > 0)
);
--> statement-breakpoint
CREATE INDEX `verdict_note_zone` ON `verdict_note` (`zone_id`,`entered_at_ms`);