import { quantiles } from "@/lib/statistics/quantile";
import { seededRandom } from "@/lib/statistics/random";
import type { Range80 } from "@/lib/working/working";

/** How far a proposal is: asked for, granted (in force or adopted as well), or shown by a verification. */
export const ROLL_UP_STAGES = ["proposed", "approved", "verified"] as const;
export type RollUpStage = (typeof ROLL_UP_STAGES)[number];

/** Totals of a year by draw; the same place is the same draw of shared assumptions in every building. */
export type RollUpDraws = Record<"saving" | "electricKwh" | "heatKwh" | "emissionsKgCo2", readonly number[]>;

export type RollUpEntry = {
  buildingId: number;
  buildingName: string;
  currency: string;
  proposalId: number;
  title: string;
  stage: RollUpStage;
  draws: RollUpDraws;
  /** What its newest verification found, in a sentence; "" before the first. */
  verification: string;
  /** Zones that it touches, by id, to see where savings overlap. */
  zoneIds: readonly number[];
};

/**
 * A sum's range twice over: `together` with every draw of one building beside the same draw of the others, since they
 * share assumptions; `apart` as if the buildings had nothing in common. The truth lies between; the wider one leads.
 */
export type SummedRange = { together: Range80; apart: Range80 };

export type RollUpCell = { count: number; range: Range80 } | null;
export type RollUpProposal = {
  proposalId: number;
  title: string;
  stage: RollUpStage;
  range: Range80;
  verification: string;
};
export type RollUpRow = {
  buildingId: number;
  buildingName: string;
  stages: Record<RollUpStage, RollUpCell>;
  proposals: RollUpProposal[];
};
export type RollUpTotal = Record<RollUpStage, { count: number; range: SummedRange } | null>;

export type RollUp = {
  /** Money by currency: never added over currencies. */
  currencies: { currency: string; rows: RollUpRow[]; total: RollUpTotal }[];
  /** Energy and emissions of all buildings together. */
  energy: { electricKwh: RollUpTotal; heatKwh: RollUpTotal; emissionsKgCo2: RollUpTotal };
  /** Proposals of one building that touch the same zones: their savings may be counted twice. */
  overlaps: { buildingName: string; first: string; second: string; zones: number }[];
};

/** Sums proposals over buildings. A proposal stands in one stage only: the farthest that it has reached. */
export function rollUp(entries: readonly RollUpEntry[]): RollUp {
  const currencies = [...new Set(entries.map(({ currency }) => currency))].sort();
  return {
    currencies: currencies.map((currency) => {
      const own = entries.filter((each) => each.currency === currency);
      const ids = [...new Set(own.map(({ buildingId }) => buildingId))];
      return {
        currency,
        rows: ids.map((id) => rowOf(own.filter(({ buildingId }) => buildingId === id))),
        total: totalOf(own, "saving"),
      };
    }),
    energy: {
      electricKwh: totalOf(entries, "electricKwh"),
      heatKwh: totalOf(entries, "heatKwh"),
      emissionsKgCo2: totalOf(entries, "emissionsKgCo2"),
    },
    overlaps: overlapsOf(entries),
  };
}

const byStage = <T>(of: (stage: RollUpStage) => T): Record<RollUpStage, T> =>
  Object.fromEntries(ROLL_UP_STAGES.map((stage) => [stage, of(stage)])) as Record<RollUpStage, T>;

function rowOf(entries: readonly RollUpEntry[]): RollUpRow {
  const { buildingId, buildingName } = entries[0] as RollUpEntry;
  const stages = byStage((stage): RollUpCell => {
    const own = entries.filter((each) => each.stage === stage);
    return own.length === 0
      ? null
      : { count: own.length, range: rangeOf(summed(own.map(({ draws }) => draws.saving))) };
  });
  const proposals = entries.map(({ proposalId, title, stage, draws, verification }) => ({
    proposalId,
    title,
    stage,
    range: rangeOf(draws.saving),
    verification,
  }));
  return { buildingId, buildingName, stages, proposals };
}

function totalOf(entries: readonly RollUpEntry[], name: keyof RollUpDraws): RollUpTotal {
  return byStage((stage) => {
    const own = entries.filter((each) => each.stage === stage);
    if (own.length === 0) return null;
    const ids = [...new Set(own.map(({ buildingId }) => buildingId))];
    const buildings = ids.map((id) =>
      summed(own.filter((each) => each.buildingId === id).map(({ draws }) => draws[name])),
    );
    return {
      count: own.length,
      range: {
        together: rangeOf(summed(buildings)),
        apart: rangeOf(summed(buildings.map((draws, at) => shuffled(draws, at)))),
      },
    };
  });
}

/** Sum draw by draw. Issues of different numbers of draws meet in those that both have. */
function summed(lists: readonly (readonly number[])[]): number[] {
  const count = Math.min(...lists.map((each) => each.length));
  return Array.from({ length: count }, (_, draw) => lists.reduce((sum, each) => sum + (each[draw] as number), 0));
}

function rangeOf(draws: readonly number[]): Range80 {
  const [p10, p50, p90] = quantiles(draws, [0.1, 0.5, 0.9]) as [number, number, number];
  return { p10, p50, p90 };
}

/** The draws in an order of their own (Fisher-Yates), the same each time; the first building keeps its order. */
function shuffled(draws: readonly number[], at: number): number[] {
  const order = [...draws];
  if (at === 0) return order;
  const random = seededRandom(at);
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j] as number, order[i] as number];
  }
  return order;
}

function overlapsOf(entries: readonly RollUpEntry[]): RollUp["overlaps"] {
  return entries.flatMap((first, at) =>
    entries.slice(at + 1).flatMap((second) => {
      if (first.buildingId !== second.buildingId) return [];
      const zones = new Set(first.zoneIds.filter((id) => second.zoneIds.includes(id))).size;
      return zones === 0 ? [] : [{ buildingName: first.buildingName, first: first.title, second: second.title, zones }];
    }),
  );
}
