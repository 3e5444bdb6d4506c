import type { CellEvidence } from "./cell-evidence";
import type { OrderVerdict } from "./date-order";
import type { TextEncodingName } from "./decode";
import type { DecimalMark } from "./number-format";

/**
 * What only the whole of a file settles. Known from an earlier reading of the same bytes, each part of the file can be
 * read on its own and come out as it would in the whole. Plain values, to be kept with the inspection.
 */
export type FileFacts = {
  encoding: TextEncodingName;
  decimal: DecimalMark;
  order: OrderVerdict;
  /** What the cells of each point hold, by `factKey`. */
  cells: Record<string, CellEvidence>;
  /** Of a zip: names that stand in more than one of its files. */
  repeatedNames?: string[];
  /** Of a zip: facts of each of its files, by name. */
  members?: Record<string, FileFacts>;
};

export const factKey = (section: number, name: string): string => `${section}:${name}`;
