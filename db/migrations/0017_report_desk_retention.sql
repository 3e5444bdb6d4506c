ALTER TABLE `comfort_report` ADD `person_day` text;--> statement-breakpoint
ALTER TABLE `report_retention` ADD `desk_days` integer DEFAULT 365 NOT NULL;