import type { PlugLogAnswers } from "@/lib/importers/plug-log/plug-quantity";
import type { OccupiedHours } from "@/lib/time/occupied-hours";
import { zoneTable } from "@/lib/time/zone-table";

const workday = [{ startMinute: 7 * 60, endMinute: 18 * 60 }];

/** Occupied 07:00 to 18:00 on five days, Chicago's clock. */
export const OFFICE: { zone: ReturnType<typeof zoneTable>; occupiedHours: OccupiedHours } = {
  zone: zoneTable("America/Chicago"),
  occupiedHours: { weekdays: { 1: workday, 2: workday, 3: workday, 4: workday, 5: workday }, holidays: [] },
};

export const NO_ANSWERS: PlugLogAnswers = { unit: null, dateOrder: null, energy: null };
