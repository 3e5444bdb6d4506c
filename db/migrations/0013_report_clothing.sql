ALTER TABLE `comfort_report` ADD `clothing` text;--> statement-breakpoint
ALTER TABLE `comfort_report` ADD `activity` text;