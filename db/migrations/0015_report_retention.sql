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
