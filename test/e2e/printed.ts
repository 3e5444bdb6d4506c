import type { Locator } from "@playwright/test";

/** A printed figure as a number: typographic minus, grouping, currency sign and bound sign taken off. */
export function printedNumber(text: string): number {
  const plain = text.replace(/\u2212/g, "-").replace(/[^\d.-]/g, "");
  if (!/^-?\d+(\.\d+)?$/.test(plain)) throw new Error(`not one figure: ${text}`);
  return Number(plain);
}

/** The rows of a table's body by their heading's words: only those that name something. */
export async function tableRows(table: Locator): Promise<Record<string, string>[]> {
  return table.evaluate((element) =>
    [...(element as HTMLTableElement).tBodies].flatMap((body) =>
      [...body.rows].flatMap((row) => {
        const cells = [...row.cells].filter((cell) => cell.dataset.label !== undefined);
        if (cells.length === 0) return [];
        return [
          Object.fromEntries(cells.map((cell) => [cell.dataset.label as string, (cell.textContent ?? "").trim()])),
        ];
      }),
    ),
  );
}

/** The totals line of a table by heading. */
export async function tableTotals(table: Locator): Promise<Record<string, string>> {
  return table.evaluate((element) =>
    Object.fromEntries(
      [...((element as HTMLTableElement).tFoot?.rows[0]?.cells ?? [])].map((cell) => [
        cell.dataset.label ?? "",
        (cell.textContent ?? "").trim(),
      ]),
    ),
  );
}
