-- A clamp meter's reading so far was taken without a loop, so it is the current itself.
UPDATE `device_setting` SET `raw_reading_a` = `current_a` WHERE `current_a` IS NOT NULL;--> statement-breakpoint
-- Watts off a nameplate leave the column of watts that were read.
UPDATE `device_setting` SET `nameplate_w` = `power_w`, `power_w` = NULL WHERE `basis` = 'nameplate';--> statement-breakpoint
-- A device was found on a day, and some were removed on another: its first steps.
INSERT INTO `device_event` (`device_id`, `status`, `on_date`, `entered_by`, `entered_at_ms`)
SELECT `id`, 'found', `found_on`, 'the register', `created_at_ms` FROM `device` ORDER BY `id`;--> statement-breakpoint
INSERT INTO `device_event` (`device_id`, `status`, `on_date`, `entered_by`, `entered_at_ms`)
SELECT `id`, 'removed', `retired_on`, 'the register', `updated_at_ms` FROM `device` WHERE `retired_on` IS NOT NULL ORDER BY `id`;--> statement-breakpoint
UPDATE `device` SET `status` = 'removed' WHERE `retired_on` IS NOT NULL;
