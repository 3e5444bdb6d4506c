import { CHECKLIST_ITEMS } from "./checklist-items";
import type { Severity } from "./inspection-words";

/** Checklists by jurisdiction; the adopted local code, the fire marshal and the insurer prevail. */
export const CHECKLIST_IDS = ["us-ifc-2018", "us-federal", "uk-2013"] as const;
export type ChecklistId = (typeof CHECKLIST_IDS)[number];

const LABELS: Record<ChecklistId, string> = {
  "us-ifc-2018": "United States, IFC 2018",
  "us-federal": "United States, federal building",
  "uk-2013": "United Kingdom, HSG107",
};
export const checklistLabel = (id: string): string => LABELS[id as ChecklistId] ?? id;

/** What a device has to be for an item to be asked of it. */
export type ItemScope = "heater" | "free-standing-heater" | "fan" | "any";

export type ChecklistItem = {
  id: string;
  /** What is wrong when it fails. */
  fault: string;
  scope: ItemScope;
  severity: Severity;
  /** Where the demand stands, with how far it was followed. */
  basis: string;
  /** Severity or basis of single checklists, where they differ; null leaves the item out. */
  elsewhere?: Partial<Record<ChecklistId, { severity?: Severity; basis?: string; fault?: string } | null>>;
};

export type InspectedDevice = { kind: "space-heater" | "personal-fan"; isContact: boolean };

/** Clearance that a heater keeps from what can burn: 3 ft, in metres. */
export const CLEARANCE_M = 3 * 0.3048;
/** Highest temperature of an element in hospitals and clinics: 212 °F, in °C (IFC 2018, 604.10.5). */
export const ELEMENT_LIMIT_C = (212 - 32) / 1.8;

/** The items of a checklist that are asked of a device, in their order. */
export function checklistFor(id: ChecklistId, device: InspectedDevice): Omit<ChecklistItem, "elsewhere">[] {
  return CHECKLIST_ITEMS.flatMap(({ elsewhere, ...item }) => {
    const own = elsewhere?.[id];
    if (own === null || !isAsked(item.scope, device)) return [];
    return { ...item, ...own };
  });
}

function isAsked(scope: ItemScope, { kind, isContact }: InspectedDevice): boolean {
  if (scope === "any") return true;
  if (kind === "personal-fan") return scope === "fan";
  return scope === "heater" || (scope === "free-standing-heater" && !isContact);
}

/** Months to the next inspection: a year for heaters, two for fans. Common practice, no source; HSG107 has ranges about these. */
export const MONTHS_TO_NEXT: Record<InspectedDevice["kind"], number> = { "space-heater": 12, "personal-fan": 24 };
