import type { Finding } from "@/lib/findings/finding";
import type { ZoneTable } from "@/lib/time/zone-table";
import type { PlugReadFindingCode, PlugRowCounts, PlugRowNote } from "./plug-log-read";
import { instantOf, type PlugStamp } from "./plug-stamps";

const MOST_NOTES = 100;

/**
 * Readings of a plug log as they come, made to ascend. A stamp like the one before replaces its reading; a step back of
 * the clock moves everything before it earlier, so that the readings keep their order and none is lost.
 */
export class PlugRows {
  readonly tsUtcSeconds: Float64Array;
  readonly values: Float64Array;
  readonly lines: Int32Array;
  readonly notes: PlugRowNote[] = [];
  count = 0;
  firstFault = "";
  #rejected = 0;
  #ignored = 0;
  #repeated = 0;
  #firstRejected = 0;
  readonly #setBack: { line: number; backSeconds: number }[] = [];
  readonly #zone: ZoneTable;

  constructor(most: number, zone: ZoneTable) {
    this.tsUtcSeconds = new Float64Array(most);
    this.values = new Float64Array(most);
    this.lines = new Int32Array(most);
    this.#zone = zone;
  }

  add(line: number, stamp: PlugStamp, value: number): void {
    const last = this.count === 0 ? Number.NEGATIVE_INFINITY : (this.tsUtcSeconds[this.count - 1] as number);
    const at = instantOf(stamp, this.#zone, last);
    if (at === last) {
      this.#repeated += 1;
      this.values[this.count - 1] = value;
      this.#note(line, "repaired", "has the stamp of the row before; its reading counts");
      return;
    }
    if (at < last) this.#setBackTo(line, at, last);
    this.tsUtcSeconds[this.count] = at;
    this.values[this.count] = value;
    this.lines[this.count] = line;
    this.count += 1;
  }

  /** The readings so far end where the later clock begins, one usual step before it. */
  #setBackTo(line: number, at: number, last: number): void {
    const step = this.count > 1 ? Math.max(1, last - (this.tsUtcSeconds[this.count - 2] as number)) : 1;
    const backSeconds = last + step - at;
    for (let i = 0; i < this.count; i++) this.tsUtcSeconds[i] = (this.tsUtcSeconds[i] as number) - backSeconds;
    this.#setBack.push({ line, backSeconds });
  }

  reject(line: number, why: string): void {
    if (this.#rejected === 0) {
      this.#firstRejected = line;
      this.firstFault = `line ${line}: ${why}`;
    }
    this.#rejected += 1;
    this.#note(line, "rejected", why);
  }

  ignore(line: number, why: string): void {
    this.#ignored += 1;
    this.#note(line, "ignored", why);
  }

  #note(line: number, fate: PlugRowNote["fate"], message: string): void {
    if (this.notes.length < MOST_NOTES) this.notes.push({ line, fate, message: `Line ${line}: ${message}.` });
  }

  valuesFall(): boolean {
    for (let i = 1; i < this.count; i++) if ((this.values[i] as number) < (this.values[i - 1] as number)) return true;
    return false;
  }

  /** `records` are all of the file; those above the data (title, headings) count as ignored. */
  counts(records: number): PlugRowCounts {
    const above = records - this.tsUtcSeconds.length;
    const { count: accepted } = this;
    return {
      inFile: records,
      accepted,
      repaired: this.#repeated,
      rejected: this.#rejected,
      ignored: this.#ignored + above,
    };
  }

  findings(): Finding<PlugReadFindingCode>[] {
    const found: Finding<PlugReadFindingCode>[] = this.#setBack.map(({ line, backSeconds }) => ({
      code: "clock-set-back",
      severity: "caution",
      evidence: { line, backMinutes: Math.round(backSeconds / 60) },
    }));
    if (this.#rejected > 0) {
      const why = this.firstFault.replace(/^line \d+: /, "");
      const evidence = { count: this.#rejected, line: this.#firstRejected, why };
      found.push({ code: "rows-not-read", severity: "caution", evidence });
    }
    if (this.#repeated > 0)
      found.push({ code: "stamps-repeated", severity: "note", evidence: { count: this.#repeated } });
    return found;
  }
}
