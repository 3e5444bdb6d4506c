import { addEvidence, type CellEvidence, evidenceOf, NO_EVIDENCE } from "./cell-evidence";
import type { ReadCells } from "./cell-reader";
import type { DateTally, OrderVerdict } from "./date-order";
import { noDates } from "./date-order";
import type { Opening } from "./describe-file";
import { type FileContext, type FileLists, newLists } from "./file-context";
import { type FileFacts, factKey } from "./file-facts";
import { type InstantBudget, InstantTally } from "./instant-tally";
import type { Layout } from "./layout";
import type { DecimalMark, MarkCounts } from "./number-format";
import { type OrderedPoint, orderPoints } from "./order-points";
import type { PointDraft } from "./point-draft";
import { draftsOverlap, PointTally } from "./point-tally";
import type { SectionReading } from "./read-section";
import type { Skeleton } from "./read-table";
import type { SettledPoint } from "./regular-points";
import { addAccounts, type RowNotes } from "./row-fates";
import { type DateOrder, NO_ROWS, type PartPoint, type RowAccounting } from "./trend-file";

/** What is known of a file after some of its parts: everything but the readings. */
export class FileTally {
  readonly dates: DateTally = noDates();
  readonly lists: FileLists = newLists();
  readonly points: PointTally[] = [];
  readonly repeatedNames = new Set<string>();
  opening: Opening | null = null;
  tables = 0;
  statistics: Layout["statistics"] = null;
  numericFlag: Layout["numericFlag"] = null;
  order: OrderVerdict = { status: "not-needed" };
  rows: RowAccounting = { ...NO_ROWS };
  notes: RowNotes = { notes: [], byCode: new Map() };
  marks: MarkCounts = { comma: 0, dot: 0, commaGroups: 0, dotGroups: 0 };
  /** How the stamps of each time source are written. */
  readonly stampForms = new Map<number, string>();
  private readonly ordersUsed = new Set<DateOrder>();
  private readonly decimalsUsed = new Set<DecimalMark>();
  sorted = false;
  /** True when times are seconds since a start that the file does not say. */
  countsSeconds = false;
  /** True when the points of a long table do not come together at each instant. */
  isScattered = false;
  isCutOff = false;
  private isMistaken = false;
  private readonly cells: Record<string, CellEvidence> = {};
  private readonly bySection = new Map<string, PointTally>();
  private readonly byKind = new Map<string, PointTally>();
  private readonly budget: InstantBudget = { kept: 0 };

  constructor(readonly facts: Partial<FileFacts>) {}

  /** True when later rows showed that earlier ones were taken for something they are not. */
  get mustRepeat(): boolean {
    const { order } = this;
    const misdated = order.status === "known" && [...this.ordersUsed].some((used) => used !== order.order);
    return this.isMistaken || misdated || this.decimalsUsed.size > 1;
  }

  /** Notes the order of day and month that a part was read by. */
  takeOrder({ order, orderUsed, clocks }: Skeleton): void {
    this.order = order;
    this.countsSeconds ||= clocks.some(({ source }) => source.form === "elapsed-seconds");
    if (order.status !== "not-needed") this.ordersUsed.add(orderUsed);
  }

  /** Notes the decimal mark that a part was read by; returns it. */
  takeDecimal(mark: DecimalMark): DecimalMark {
    this.decimalsUsed.add(mark);
    return mark;
  }

  get decimal(): DecimalMark {
    return this.facts.decimal ?? [...this.decimalsUsed].at(-1) ?? ".";
  }

  get readings(): number {
    return this.points.reduce((sum, point) => sum + point.readings, 0);
  }

  get evidenceByPoint(): Record<string, CellEvidence> {
    return this.facts.cells ?? this.cells;
  }

  /** What the cells of a point hold in the whole file when that is known, else in as much of it as has been read. */
  evidence = (section: number, name: string, cells: ReadCells): CellEvidence => {
    const key = factKey(section, name);
    const whole = this.facts.cells?.[key];
    if (whole) return whole;
    const own = evidenceOf(cells);
    const before = this.cells[key];
    const sum = before ? addEvidence(before, own) : own;
    this.cells[key] = sum;
    return sum;
  };

  /** Takes in what one part holds; returns its points with their readings. */
  add(sections: readonly SectionReading[], context: FileContext, delimiter: string): PartPoint[] {
    this.tables = (sections.at(-1)?.section ?? 0) + 1;
    const merged = new Map<PointTally, PointDraft>();
    for (const section of sections) {
      for (const name of section.repeatedNames) this.repeatedNames.add(name);
      this.statistics ??= section.layout.statistics;
      this.numericFlag ??= section.layout.numericFlag;
      for (const draft of section.drafts) this.place(draft, merged);
    }
    const ordered = orderPoints([...merged.values()], context);
    [...merged.keys()].forEach((tally, i) => {
      this.sorted ||= ordered[i]?.reordered === true || this.runsBack(tally, ordered[i] as OrderedPoint);
      tally.addReadings(ordered[i] as OrderedPoint);
    });
    this.addInstants([...merged.keys()], ordered);
    addLists(this.lists, context.lists);
    const from = context.continued ? 0 : (context.skeleton.sections[0]?.dataFrom ?? 0);
    const account = context.fates.account(from, delimiter, this.notes);
    this.rows = addAccounts(this.rows, account);
    return [...merged.keys()].map((tally, i) => pointOf(tally, ordered[i] as OrderedPoint));
  }

  pointAt(key: string): PointTally | undefined {
    return this.bySection.get(key);
  }

  evidenceAt(key: string): CellEvidence {
    return this.evidenceByPoint[key] ?? NO_EVIDENCE;
  }

  /** Takes in the points of rows that are plain throughout: all of them accepted. */
  addRegular(points: readonly SettledPoint[], rows: number): PartPoint[] {
    const ordered = points.map(
      ({ tally, ts, values, stateNames, instants, among, written }): OrderedPoint => ({
        draft: tally.draft,
        ts,
        values,
        stateNames,
        instants,
        among,
        written,
        reordered: false,
      }),
    );
    points.forEach(({ tally, key, evidence, blanks, missing, sum }, i) => {
      if (!this.facts.cells) this.cells[key] = addEvidence(this.evidenceAt(key), evidence);
      if (blanks > 0) tally.lists["value-missing"].addCounted(blanks, missing);
      this.sorted ||= this.runsBack(tally, ordered[i] as OrderedPoint);
      tally.addReadings(ordered[i] as OrderedPoint, sum);
    });
    this.addInstants(
      points.map(({ tally }) => tally),
      ordered,
    );
    this.rows = addAccounts(this.rows, { ...NO_ROWS, rowsInFile: rows, accepted: rows });
    return points.map(({ tally }, i) => pointOf(tally, ordered[i] as OrderedPoint));
  }

  /** Finds the point that a draft adds to, or begins one. */
  private place(draft: PointDraft, merged: Map<PointTally, PointDraft>): void {
    const own = factKey(draft.section, draft.name);
    const kind = `${draft.name}\n${draft.unitAsWritten}\n${draft.kind}`;
    let tally = this.bySection.get(own);
    if (tally?.disagreesWith(draft)) this.isMistaken = true;
    if (!tally) {
      const alike = this.byKind.get(kind);
      const there = alike && merged.get(alike);
      // Tables of one name and unit that follow each other in time (pages of a report) add to one point; where they
      // overlap they are two points, told apart by the number of the table.
      if (alike && (alike.overlaps(draft) || (there && draftsOverlap(there, draft)))) {
        this.repeatedNames.add(draft.name);
        tally = this.begin(`${draft.name} (table ${draft.section + 1})`, draft);
      } else if (alike) tally = alike;
      else {
        tally = this.begin(draft.name, draft);
        this.byKind.set(kind, tally);
      }
      this.bySection.set(own, tally);
    }
    tally.addNotices(draft);
    const there = merged.get(tally);
    if (there) {
      there.chunks.push(...draft.chunks);
      there.presence.push(...draft.presence);
    } else merged.set(tally, draft);
  }

  private begin(name: string, draft: PointDraft): PointTally {
    // Without its readings, which would keep every part in memory.
    const tally = new PointTally(name, { ...draft, chunks: [], presence: [] });
    this.points.push(tally);
    return tally;
  }

  private runsBack(tally: PointTally, { ts }: OrderedPoint): boolean {
    return tally.last !== null && ts.length > 0 && (ts[0] as number) < tally.last.ts;
  }

  /** Adds the instants of the points' rows; points that share them in every part go on sharing one tally. */
  private addInstants(tallies: readonly PointTally[], ordered: readonly OrderedPoint[]): void {
    const extended = new Map<Float64Array, Map<InstantTally | null, InstantTally>>();
    const taken = new Set<InstantTally>();
    const befores = new Map(tallies.map((tally) => [tally, tally.instants]));
    tallies.forEach((tally, i) => {
      const { instants } = ordered[i] as OrderedPoint;
      const before = befores.get(tally) ?? null;
      const shared = extended.get(instants) ?? new Map<InstantTally | null, InstantTally>();
      extended.set(instants, shared);
      let after = shared.get(before);
      if (!after) {
        after = before === null ? new InstantTally(this.budget) : taken.has(before) ? before.copy() : before;
        shared.set(before, after);
      }
      tally.instants = after;
      if (before !== null) taken.add(before);
    });
    for (const [instants, shared] of extended) for (const tally of new Set(shared.values())) tally.add(instants);
  }
}

function addLists({ conflicting, ...lists }: FileLists, part: FileLists): void {
  conflicting.addAll(part.conflicting);
  for (const key of Object.keys(lists) as (keyof typeof lists)[]) lists[key].addAll(part[key]);
}

function pointOf({ name, draft }: PointTally, { ts, values, stateNames, among, written }: OrderedPoint): PartPoint {
  return {
    name,
    kind: draft.kind,
    unitAsWritten: draft.unitAsWritten,
    unit: draft.unit,
    tsUtcSeconds: ts,
    values,
    ...(among ? { among } : {}),
    ...(written ? { written } : {}),
    ...(stateNames ? { stateNames } : {}),
    ...(draft.intervalSeconds === null ? {} : { intervalSeconds: draft.intervalSeconds }),
  };
}
