const collator = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

/**
 * Order in which people list codes: numbers inside a name count as numbers (VAV-2 before VAV-10), capitals as small letters. Names
 * that differ only in writing stand in the order of their characters, so that no two orders are possible.
 */
export function naturalCompare(a: string, b: string): number {
  return collator.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
}
