import type { KeptResult, ResultStore } from "@/db/results";

/** Results that are held at once; the one that was asked for longest ago makes room. */
const MOST_HELD = 48;

/** Results as they were read last: while the store's stamp stays the same, none is unpacked twice. Nobody may change them. */
export class ResultMemory {
  private readonly held = new Map<string, KeptResult>();

  find(store: ResultStore, buildingId: number, subject: string): KeptResult | null {
    const key = `${buildingId} ${subject}`;
    const stamp = store.stamp(buildingId, subject);
    const known = this.held.get(key);
    const isSame = known && stamp && known.workedOutAtMs === stamp.workedOutAtMs && known.restsOn === stamp.restsOn;
    const found = isSame ? known : store.find(buildingId, subject);
    this.held.delete(key);
    if (found) this.held.set(key, found);
    if (this.held.size > MOST_HELD) this.held.delete(this.held.keys().next().value as string);
    return found;
  }
}
