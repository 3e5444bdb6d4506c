ALTER TABLE `import_run` ADD `again` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `import_run` ADD `owner` text;--> statement-breakpoint
ALTER TABLE `import_run` ADD `heartbeat_at_ms` integer;--> statement-breakpoint
ALTER TABLE `import_run` ADD `attempts` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `import_run` ADD `withdrawal_asked_by` text;--> statement-breakpoint
ALTER TABLE `import_run` ADD `stage_started_at_ms` integer;--> statement-breakpoint
ALTER TABLE `import_run` ADD `bytes_to_read` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `import_run` ADD `bytes_read` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `import_run` ADD `rows_read` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `import_run` ADD `readings_read` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `import_run` ADD `findings_so_far` text;--> statement-breakpoint
CREATE INDEX `import_run_queue` ON `import_run` (`state`,`id`);