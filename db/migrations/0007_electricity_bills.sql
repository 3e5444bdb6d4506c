CREATE TABLE `electricity_bill` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`building_id` integer NOT NULL,
	`from_date` text NOT NULL,
	`until_date` text NOT NULL,
	`energy_kwh` real NOT NULL,
	`billed_demand_kw` real,
	`charges` real,
	FOREIGN KEY (`building_id`) REFERENCES `building`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "electricity_bill_days" CHECK("electricity_bill"."from_date" < "electricity_bill"."until_date"),
	CONSTRAINT "electricity_bill_energy" CHECK("electricity_bill"."energy_kwh" >= 0),
	CONSTRAINT "electricity_bill_demand" CHECK("electricity_bill"."billed_demand_kw" is null or "electricity_bill"."billed_demand_kw" >= 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `electricity_bill_from` ON `electricity_bill` (`building_id`,`from_date`);