/**
 * Fewest people whose figures stand by themselves: 5 on a screen, 10 in what is published or handed on. Common survey practice,
 * no source.
 */
export const LEAST_PEOPLE = { screen: 5, publication: 10 } as const;

/** Counts of reports of a group of occupants, and of how many people they are at least. Nobody at all is 0, with counts of 0. */
export type OccupantGroup<K, C extends string> = { key: K; people: number; counts: Readonly<Record<C, number>> };

/** What may be shown of groups; a null may not be. */
export type Disclosure<K, C extends string> = {
  /** Groups that are not shown by themselves. */
  hidden: ReadonlySet<K>;
  /** Counts of the hidden groups in one, and of all groups. */
  together: Readonly<Record<C, number | null>>;
  totals: Readonly<Record<C, number | null>>;
  /** A count over some of the groups, null where it would tell a hidden group's, by itself or by what is left of the total. */
  sumOver(keys: ReadonlySet<K>, column: C): number | null;
};

/**
 * Decides which counts of groups may be shown so that no group of fewer than `least` people can be read or worked out from the
 * rest. A small group is hidden; while those hidden are one alone, or fewer than `least` people together, the smallest group
 * shown is hidden with them (complementary suppression). A total, or the sum of the hidden, is given out only where it leaves
 * each of them open: over two groups or more, of `least` people or more, and greater than the number of groups, since each of
 * them has sent one report at least. Groups without any report stay 0.
 */
export function discloseCounts<K, C extends string>(
  groups: readonly OccupantGroup<K, C>[],
  columns: readonly C[],
  least: number,
): Disclosure<K, C> {
  const bySize = groups.filter(({ people }) => people > 0).sort((a, b) => a.people - b.people);
  const smallOnes = bySize.filter(({ people }) => people < least).length;
  let count = smallOnes;
  if (smallOnes > 0) while (count < bySize.length && !isEnough(bySize.slice(0, count), least)) count++;
  const hiddenGroups = bySize.slice(0, count);
  const hidden = new Set(hiddenGroups.map(({ key }) => key));
  const total = (of: readonly OccupantGroup<K, C>[], column: C): number =>
    of.reduce((sum, { counts }) => sum + counts[column], 0);
  const isOpen = (of: readonly OccupantGroup<K, C>[], column: C): boolean =>
    of.length === 0 || (isEnough(of, least) && total(of, column) > of.length);
  const byColumn = (figure: (column: C) => number | null): Record<C, number | null> =>
    Object.fromEntries(columns.map((column) => [column, figure(column)])) as Record<C, number | null>;
  return {
    hidden,
    together: byColumn((column) => (isOpen(hiddenGroups, column) ? total(hiddenGroups, column) : null)),
    totals: byColumn((column) => (isOpen(hiddenGroups, column) ? total(groups, column) : null)),
    sumOver(keys, column) {
      const within = hiddenGroups.filter(({ key }) => keys.has(key));
      const beyond = hiddenGroups.filter(({ key }) => !keys.has(key));
      const isTold = within.length === 0 || (isOpen(within, column) && isOpen(beyond, column));
      return isTold
        ? total(
            groups.filter(({ key }) => keys.has(key)),
            column,
          )
        : null;
    },
  };
}

const isEnough = (groups: readonly { people: number }[], least: number): boolean =>
  groups.length >= 2 && groups.reduce((sum, { people }) => sum + people, 0) >= least;
