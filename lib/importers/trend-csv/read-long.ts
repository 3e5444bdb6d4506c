import type { FileContext } from "./file-context";
import type { Layout, ValueColumn } from "./layout";
import type { PointDraft } from "./point-draft";
import { clockOf, collect, rowsWithStamp } from "./read-columns";
import { UNREAD } from "./row-fates";
import type { Section } from "./sections";
import { readUnit, splitUnit } from "./units";

/** Reads a table of one row a reading. Rows without a point's name, or in another unit than its first row, are rejected. */
export function readLong(index: number, section: Section, layout: Layout, context: FileContext): PointDraft[] {
  const { nameColumn, valueColumn, unitColumn, statusColumn, source } = layout.long as NonNullable<Layout["long"]>;
  const { rows, fates, lists } = context;
  const clock = clockOf(source, context);
  const all = rowsWithStamp(section, clock, null, context);
  const byPoint = new Map<string, number[]>();
  for (const row of all) {
    const name = rows.cell(row, nameColumn).trim();
    if (name === "") {
      lists.unreadable.add(rows.lines[row] as number);
      fates.mark(row, UNREAD, "row-unreadable");
      continue;
    }
    const known = byPoint.get(name);
    if (known) known.push(row);
    else byPoint.set(name, [row]);
  }
  return [...byPoint].flatMap(([name, list]) => {
    // Without a column of units a name may carry its own: `VAV-2-14 ZN-T (°F)`.
    const unitOf = (row: number): string | null =>
      unitColumn === null ? splitUnit(name).unitAsWritten : rows.cell(row, unitColumn).trim() || null;
    const before = context.unitBefore(index, name);
    const unitAsWritten = before === undefined || unitColumn === null ? unitOf(list[0] as number) : before;
    const sameUnit = unitColumn === null ? list : list.filter((row) => unitOf(row) === unitAsWritten);
    if (sameUnit.length < list.length) {
      const kept = new Set(sameUnit);
      for (const row of list) {
        if (kept.has(row)) continue;
        lists.unreadable.add(rows.lines[row] as number);
        fates.mark(row, UNREAD, "row-unreadable");
      }
    }
    const value: ValueColumn = {
      column: valueColumn,
      heading: name,
      name,
      unitAsWritten,
      unit: unitAsWritten === null ? null : (readUnit(unitAsWritten)?.unit ?? null),
      statusColumn,
      nameFromFile: false,
    };
    return collect(Int32Array.from(sameUnit), clock, [value], index, layout, context).map((draft) => ({
      ...draft,
      column: null,
    }));
  });
}
