import { z } from "zod";
import { type AppTransaction, inTransaction } from "@/db/client";
import { type DeviceWithSettings, findDevice } from "@/db/queries/devices";
import { correctInspectionItem, findInspectionItem, insertInspection } from "@/db/queries/inspections";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { CHECKLIST_IDS, type ChecklistId, checklistFor, MONTHS_TO_NEXT } from "@/lib/electrical/inspection/checklists";
import { ITEM_OUTCOMES } from "@/lib/electrical/inspection/inspection-words";
import { DAYS_TO_DUE } from "@/lib/electrical/inspection/safety-condition";
import { dayNumberFromLocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import { actorName, requireFacilities } from "../authorise";
import type { Context } from "../context";
import { writeStep } from "../devices/life";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

const isDate = (date: string): boolean => dayNumberFromLocalDate(date) !== null;
const day = z.string().refine(isDate, "Give the day as YYYY-MM-DD.");
const dayOrNone = z
  .string()
  .nullable()
  .default(null)
  .transform((date) => date || null)
  .refine((date) => date === null || isDate(date), "Give the day as YYYY-MM-DD.");

const inspectionInput = z.object({
  checklist: z.enum(CHECKLIST_IDS, "Choose a checklist."),
  inspectedOn: day,
  nextDueOn: dayOrNone,
  note: z.string().trim().max(500, "Keep the note under 500 characters.").default(""),
  items: z.record(
    z.string(),
    z.object({
      outcome: z.enum(ITEM_OUTCOMES, "Say what was seen."),
      note: z.string().trim().max(300, "Keep the note under 300 characters.").default(""),
      dueOn: dayOrNone,
    }),
  ),
});

export type InspectionInput = z.input<typeof inspectionInput>;

/**
 * Keeps what was seen of a device by a checklist. What has to be taken out of use or put right before use takes an approval back
 * to review. Items that were not looked at are kept as such. Returns the id.
 */
export function recordInspection(ctx: Context, buildingId: number, deviceId: number, input: InspectionInput): number {
  const enteredBy = actorName(requireFacilities(ctx));
  const device = findDevice(ctx.db, buildingId, deviceId);
  if (!device) throw new ServiceError("not-found", "This device does not exist.");
  const said = parseInput(inspectionInput, input);
  const asked = itemsFor(device, said.checklist);
  if (!Object.values(said.items).some(({ outcome }) => outcome !== "not-seen"))
    throw new ServiceError("invalid", "Nothing was looked at yet: say of one item at least what was seen.");
  if (said.inspectedOn < device.foundOn)
    throw new ServiceError("invalid", `It was found on ${device.foundOn}: it cannot have been inspected before.`, {
      inspectedOn: `Give a day from ${device.foundOn} on.`,
    });
  const items = asked.map(({ id, severity }) => {
    const seen = said.items[id] ?? { outcome: "not-seen" as const, note: "", dueOn: null };
    const dueOn = seen.outcome === "fail" ? (seen.dueOn ?? daysAfter(said.inspectedOn, DAYS_TO_DUE[severity])) : null;
    return { itemId: id, severity, outcome: seen.outcome, note: seen.note, dueOn };
  });
  return inTransaction(ctx.db, (tx) => {
    const { id } = insertInspection(
      tx,
      {
        deviceId,
        inspectedOn: said.inspectedOn,
        checklist: said.checklist,
        nextDueOn: said.nextDueOn ?? monthsAfter(said.inspectedOn, MONTHS_TO_NEXT[device.kind]),
        note: said.note,
        enteredBy,
        enteredAtMs: ctx.now,
      },
      items,
    );
    takeBackApproval(tx, device, items, { onDate: said.inspectedOn, enteredBy, enteredAtMs: ctx.now });
    return id;
  });
}

/** Items of a checklist that are asked of this device. */
export function itemsFor(device: DeviceWithSettings, checklist: ChecklistId) {
  const isContact = deviceClassById(device.deviceClass)?.isContact ?? false;
  return checklistFor(checklist, { kind: device.kind, isContact });
}

/** An unsafe device is under review, whatever was approved before; what is on its way out stays so. */
function takeBackApproval(
  tx: AppTransaction,
  device: DeviceWithSettings,
  items: readonly { outcome: string; severity: string }[],
  step: { onDate: string; enteredBy: string; enteredAtMs: number },
): void {
  const failed = items.filter(({ outcome }) => outcome === "fail");
  const unsafe = failed.filter(
    ({ severity }) => severity === "take-out-of-use" || severity === "correct-before-use",
  ).length;
  const settled = device.status === "approved-to-remain" || device.status === "found" || device.status === "returned";
  if (unsafe === 0 || !settled) return;
  const note = `Inspection: ${unsafe} ${unsafe === 1 ? "item" : "items"} to put right.`;
  writeStep(tx, device.id, { ...step, status: "under-review", note });
}

const correctionInput = z.object({
  correctedOn: day,
  correctionNote: z.string().trim().max(300, "Keep the note under 300 characters.").default(""),
});

/** Says of a failed item that it was put right, when and how. */
export function correctItem(
  ctx: Context,
  buildingId: number,
  deviceId: number,
  itemRowId: number,
  input: z.input<typeof correctionInput>,
): void {
  const correctedBy = actorName(requireFacilities(ctx));
  const item = findDevice(ctx.db, buildingId, deviceId) && findInspectionItem(ctx.db, deviceId, itemRowId);
  if (!item) throw new ServiceError("not-found", "This item does not exist.");
  if (item.outcome !== "fail") throw new ServiceError("precondition", "This item was not found at fault.");
  correctInspectionItem(ctx.db, itemRowId, { ...parseInput(correctionInput, input), correctedBy });
}

const daysAfter = (date: string, days: number): string =>
  localDateFromDayNumber((dayNumberFromLocalDate(date) ?? 0) + days);

/** The same day so many months on, the last of a shorter month. */
function monthsAfter(date: string, months: number): string {
  const [year = 0, month = 1, dayOfMonth = 1] = date.split("-").map(Number);
  const index = year * 12 + month - 1 + months;
  const first = `${Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, "0")}`;
  for (let last = dayOfMonth; last > 28; last -= 1) {
    const candidate = `${first}-${last}`;
    if (isDate(candidate)) return candidate;
  }
  return `${first}-${String(Math.min(dayOfMonth, 28)).padStart(2, "0")}`;
}
