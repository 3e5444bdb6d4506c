import type { DeviceClass } from "@/lib/electrical/device-classes";
import type { WalkEntryInput } from "@/lib/services/walks/entry-input";
import type { WalkDesk } from "@/lib/services/walks/read";

/** An entry as the phone keeps it until it is done with. */
export type LocalEntry = WalkEntryInput & {
  buildingId: number;
  state: "unsent" | "sent" | "conflict" | "refused";
  message: string;
  unknown: string[];
  field: string | null;
};

type Made = Pick<LocalEntry, "deskCode">;

export const isSeen = (desk: WalkDesk, made: readonly Made[]): boolean =>
  desk.entries.length > 0 || made.some((entry) => entry.deskCode === desk.code);

export type FloorLine = { floor: string; done: number; of: number };

/** Floors in the order of their desks, with how many were seen. */
export function floorLines(desks: readonly WalkDesk[], made: readonly Made[]): FloorLine[] {
  const lines = new Map<string, FloorLine>();
  for (const desk of desks) {
    const line = lines.get(desk.floor) ?? { floor: desk.floor, done: 0, of: 0 };
    lines.set(desk.floor, { ...line, of: line.of + 1, done: line.done + (isSeen(desk, made) ? 1 : 0) });
  }
  return [...lines.values()];
}

export const floorName = (floor: string): string => (floor ? `Floor ${floor}` : "No floor given");

export function progressWords(desks: readonly WalkDesk[], made: readonly Made[]): string {
  const done = desks.filter((desk) => isSeen(desk, made)).length;
  return `${done} of ${desks.length} desks`;
}

/** The next desk of a floor that nobody has seen yet, after this one and then from the start; null when all are seen. */
export function nextDesk(
  desks: readonly WalkDesk[],
  made: readonly Made[],
  floor: string,
  after: string | null,
): WalkDesk | null {
  const own = desks.filter((desk) => desk.floor === floor);
  const from = own.findIndex((desk) => desk.code === after) + 1;
  return [...own.slice(from), ...own.slice(0, from)].find((desk) => !isSeen(desk, made)) ?? null;
}

/** The label after one: stickers come on a roll. `H-013` is followed by `H-014`; labels that are taken are passed over. */
export function labelAfter(label: string, taken: ReadonlySet<string>): string {
  const match = /^(.*?)(\d+)$/.exec(label);
  if (!match) return "";
  const [, head = "", digits = ""] = match;
  for (let number = Number(digits) + 1; ; number++) {
    const next = head + String(number).padStart(digits.length, "0");
    if (!taken.has(next)) return next;
  }
}

/** The last of the labels that end in a number and begin like most: where the roll of stickers stands. */
export function lastLabel(labels: readonly string[]): string {
  const heads = new Map<string, { count: number; highest: number; label: string }>();
  for (const label of labels) {
    const match = /^(.*?)(\d+)$/.exec(label);
    if (!match) continue;
    const [, head = "", digits = ""] = match;
    const known = heads.get(head) ?? { count: 0, highest: -1, label };
    const isHigher = Number(digits) > known.highest;
    heads.set(head, {
      count: known.count + 1,
      highest: isHigher ? Number(digits) : known.highest,
      label: isHigher ? label : known.label,
    });
  }
  return [...heads.values()].sort((a, b) => b.count - a.count)[0]?.label ?? "D-000";
}

/** Settings in the order in which they are read: those that heat or blow first, off and the fan alone when asked for. */
export function readingOrder(deviceClass: DeviceClass): { first: string[]; later: string[] } {
  const names = deviceClass.settings.map((setting) => setting.name as string);
  const isLater = (name: string): boolean => name === "off" || name === "fan-only";
  const first = names.filter((name) => !isLater(name));
  return first.length > 0 ? { first, later: names.filter(isLater) } : { first: names, later: [] };
}

/** Classes with those that were met last in front. */
export function classesInOrder(
  classes: readonly DeviceClass[],
  recent: readonly string[],
  mainsVoltageV: number,
): DeviceClass[] {
  const rank = (each: DeviceClass): number => {
    const at = recent.indexOf(each.id);
    if (at >= 0) return at;
    return Math.abs(each.nominalVoltageV - mainsVoltageV) < 40 ? 100 : 200;
  };
  return classes
    .map((each, at) => ({ each, at }))
    .sort((a, b) => rank(a.each) - rank(b.each) || a.at - b.at)
    .map(({ each }) => each);
}

const ENTRY_WORDS = { nothing: "nothing here", device: "a device", seen: "still here", missing: "not here" } as const;

/** What an entry says, in a line of the list of what is unsent. */
export function entryWords(entry: LocalEntry, desks: readonly WalkDesk[]): string {
  if (entry.kind === "device") return `${entry.deskCode}: ${entry.device?.label ?? "a device"}`;
  const label = desks.flatMap((desk) => desk.devices).find((device) => device.id === entry.deviceId)?.label;
  return `${entry.deskCode}: ${label ? `${label} ` : ""}${ENTRY_WORDS[entry.kind]}`;
}
