import { type Inbox, type InboxView, isInboxView, type OpenZone } from "@/lib/services/comfort-reports/inbox";
import type { ZonesOverview } from "@/lib/services/zones/shown";
import { VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";

type Wanted = { view: InboxView; zoneId: number | null; page: number };

/** What the address asks for; anything that is not known shows the open reports. */
export function wantedOf(query: Record<string, string | string[] | undefined>): Wanted {
  const one = (name: string): string => [query[name]].flat()[0] ?? "";
  const view = one("view");
  return {
    view: isInboxView(view) ? view : "open",
    zoneId: /^\d+$/.test(one("zone")) ? Number(one("zone")) : null,
    page: /^\d+$/.test(one("page")) ? Number(one("page")) : 1,
  };
}

/** Addresses of the inbox, with what is asked for now but for what changes; another view begins at its first page. */
export const inboxAddress =
  (here: string, { view, zoneId }: Wanted) =>
  (change: { page?: number; view?: InboxView; zoneId?: number | null }): string => {
    const query = new URLSearchParams();
    const next = { view, zoneId, ...change };
    if (next.view !== "open") query.set("view", next.view);
    if (next.zoneId !== null && next.zoneId !== undefined) query.set("zone", String(next.zoneId));
    if (change.page && change.page > 1) query.set("page", String(change.page));
    return query.size > 0 ? `${here}?${query}` : here;
  };

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** The page's one sentence. */
export function inboxLede({ zones }: Pick<Inbox, "zones">): string {
  if (zones.length === 0) return "No report is open.";
  const total = (of: (zone: OpenZone) => number) => zones.reduce((sum, zone) => sum + of(zone), 0);
  const wide = zones.filter(({ reach }) => reach === "zone-wide").length;
  return `${count(
    total(({ reports }) => reports),
    "report is",
    "reports are",
  )} open in ${count(zones.length, "zone", "zones")}: ${total(({ cold }) => cold)} cold, ${total(({ hot }) => hot)} hot. In ${count(wide, "zone", "zones")} more than one person reports.`;
}

/** How long ago, in the unit that fits: "3 h", "12 days". */
export function ageWords(ms: number): string {
  const hours = ms / 3_600_000;
  if (hours < 1) return "under 1 h";
  return hours < 48 ? `${Math.round(hours)} h` : `${Math.round(hours / 24)} days`;
}

/** How fast reports were answered. */
export function responseWords({ days, reports, answered, medianMs }: Inbox["response"]): string {
  if (reports === 0) return `No report came in within the last ${days} days.`;
  const share = `Of ${count(reports, "report", "reports")} of the last ${days} days ${answered} ${answered === 1 ? "was" : "were"} answered`;
  if (answered === 0) return `${share}.`;
  return medianMs === null
    ? `${share}; too few people for a usual time.`
    : `${share}, half of them within ${ageWords(medianMs)}.`;
}

export type OpenZoneLine = OpenZone & { age: string; from: string; verdict: string; href: string };

/** Zones with open reports as the table shows them. */
export function openZoneLines(
  { zones }: Pick<Inbox, "zones">,
  known: { zones: ZonesOverview["zones"]; nowMs: number; here: string },
): OpenZoneLine[] {
  const verdicts = new Map(known.zones.map(({ zone, diagnosis }) => [zone.id, diagnosis?.verdict]));
  return zones.map((zone) => {
    const verdict = verdicts.get(zone.zoneId);
    return {
      ...zone,
      age: ageWords(known.nowMs - zone.oldestAtMs),
      from: zone.reach === "zone-wide" ? "more than one person" : "one desk or person",
      verdict: verdict ? VERDICT_WORDS[verdict] : "not known",
      href: `${known.here}?zone=${zone.zoneId}`,
    };
  });
}
