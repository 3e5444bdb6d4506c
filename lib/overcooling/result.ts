import type { Working } from "@/lib/working/working";
import {
  type Assessed,
  COMPONENT_LABELS,
  type ComponentResult,
  type EnergyRange,
  TIER_LABELS,
  type ZoneResult,
} from "./assessment";
import type { AssessmentInput } from "./assessment-input";
import { contributionsTo, drawsNearMedian, spreadOf } from "./calculation/contributions";
import { type Quantity, type Step, type Sum, sum } from "./calculation/quantity";
import type { Study } from "./calculation/study";
import { workingOf } from "./calculation/working-of";
import type { Cell, ComponentModel, TierModel } from "./component-model";
import type { Row } from "./rows";
import { verifiedWords } from "./tiers/verified-tier";
import type { Totals } from "./totals";

/** What a result needs the draws of. */
export const drawsNeeded = (model: TierModel): Quantity[] => [
  model.total,
  ...model.components.map((each) => each.money),
];

/** Cost of each row over all components. */
export function rowTotals(model: TierModel, rows: readonly Row[]): Map<Row, Sum> {
  const cellsOf = cellsByRow(model);
  const totalOf = (row: Row): Sum =>
    sum({
      symbol: "C_z",
      label: `cost of overcooling, ${row.code}`,
      unit: model.total.unit,
      formula: "C_z = sum of the components",
      parts: cellsOf(row).map(({ component, cell }) => ({
        symbol: component.money.symbol,
        label: COMPONENT_LABELS[component.id],
        quantity: cell.money,
      })),
    });
  return new Map(rows.map((row) => [row, totalOf(row)]));
}

type Placed = { component: ComponentModel; cell: Cell };

function cellsByRow(model: TierModel): (row: Row) => Placed[] {
  const byRow = new Map<Row, Placed[]>();
  for (const component of model.components) {
    for (const cell of component.cells) byRow.set(cell.row, [...(byRow.get(cell.row) ?? []), { component, cell }]);
  }
  return (row) => byRow.get(row) ?? [];
}

type Evaluated = {
  input: AssessmentInput;
  model: TierModel;
  byRow: ReadonlyMap<Row, Sum>;
  totals: Totals;
  avoidable: Sum;
  heatingSeason: Step | null;
  study: Study;
};

/** Reads a result off an evaluated study. */
export function assessmentResult({
  input,
  model,
  byRow,
  totals,
  avoidable,
  heatingSeason,
  study,
}: Evaluated): Omit<Assessed, "findings" | "lowerTiers"> {
  const cells = model.components.flatMap((component) => component.cells);
  const headline = spreadOf(study.draws(model.total));
  const near = study.meansOver(
    drawsNearMedian(study.draws(model.total)),
    cells.map((each) => each.money),
  );
  const parts = contributionsTo(
    headline.p50,
    cells.map((each, i) => ({ mean: near[i] as number, varies: study.varies(each.money) })),
  );
  const partOf = new Map(cells.map((each, i) => [each, parts[i] as number]));
  const allElectric = input.heatingFuel === "electricity";
  const energyOf = (quantity: Quantity | null): number | null => (quantity ? study.stated(quantity) : null);

  const components = model.components.map((each): ComponentResult => {
    const { p10, p90 } = spreadOf(study.draws(each.money));
    const [electric, heat] = [energyOf(each.electric), energyOf(each.heat)];
    return {
      id: each.id,
      label: COMPONENT_LABELS[each.id],
      electricKwh: allElectric && heat !== null ? (electric ?? 0) + heat : electric,
      heatKwh: allElectric ? null : heat,
      statedValue: study.stated(each.money),
      contribution: each.cells.reduce((total, cell) => total + (partOf.get(cell) ?? 0), 0),
      p10,
      p90,
      working: workingOf(each.money, study),
    };
  });
  const cellsOf = cellsByRow(model);
  const zones = [...byRow].map(([row, total]): ZoneResult => {
    const { p10, p90 } = spreadOf(study.draws(total));
    const byComponent = cellsOf(row).map(({ component, cell }) => ({
      componentId: component.id,
      statedValue: study.stated(cell.money),
      contribution: partOf.get(cell) ?? 0,
    }));
    return {
      zoneId: row.zoneId,
      code: row.code,
      floorAreaM2: row.floorAreaM2,
      measured: model.tier >= 2 && row.record !== null,
      statedValue: study.stated(total),
      contribution: byComponent.reduce((all, each) => all + each.contribution, 0),
      p10,
      p90,
      byComponent,
      working: workingOf(total, study, 1),
    };
  });
  const range = (quantity: Step | Sum): EnergyRange => ({
    ...spreadOf(study.draws(quantity)),
    stated: study.stated(quantity),
    working: workingOf(quantity, study, 1),
  });
  const assumptionIds = new Set(
    [model.total, totals.emissionsKgCo2, avoidable, ...(heatingSeason ? [heatingSeason] : [])]
      .flatMap((root) => study.inputsOf(root))
      .flatMap((each) => each.assumptionId ?? []),
  );
  return {
    status: "ok",
    tier: {
      number: model.tier,
      label: model.tier === 4 ? verifiedWords(input.proofs) : TIER_LABELS[model.tier],
    },
    verifiedBy:
      model.tier === 4 ? input.proofs.map(({ proposalId, title, foundOn }) => ({ proposalId, title, foundOn })) : [],
    headline,
    statedTotal: study.stated(model.total),
    working: headlineWorking(model, study),
    avoidable: {
      ...range(avoidable),
      zonesLeftOut: [...byRow.keys()].filter((row) => row.zone?.fixInProgress).map((row) => row.code),
    },
    heatingSeason: heatingSeason && range(heatingSeason),
    energy: { electricKwh: range(totals.electricKwh), heatKwh: range(totals.heatKwh) },
    emissionsKgCo2: range(totals.emissionsKgCo2),
    components,
    zones,
    tornado: study.tornado(model.total).map((line) => ({
      ...line,
      assumptionId: assumptionIds.has(line.id) ? line.id : null,
    })),
    defaultsShare: defaultsShare(study, model.total),
    assumptionIds: [...assumptionIds],
  };
}

/** The sum of the components, with what the draws make of it. */
function headlineWorking(model: TierModel, study: Study): Working {
  const working = workingOf(model.total, study, 0);
  model.components.forEach((each, i) => {
    const term = working.terms[i];
    if (term) Object.assign(term, { href: `/working/${each.id}`, source: "worked out on a page of its own" });
  });
  const draws = study.draws(model.total);
  const { p10, p50, p90 } = spreadOf(draws);
  const [low, middle, high] = [p10, p50, p90].map((each) => each.toPrecision(6));
  working.notes = [
    `With every uncertain input drawn from its range, ${draws.length} times over, the total lies below ${low} in one draw of ten, below ${middle} in half of them and below ${high} in nine of ten: P10, P50 and P90. Ranges lean upwards, so the P50 is not this sum.`,
  ];
  return working;
}

/** Defaults of the tool among the kinds of input of a figure. Readings of all zones or devices are one kind. */
function defaultsShare(study: Study, total: Quantity): number {
  const kinds = new Map<string, boolean>();
  for (const each of study.inputsOf(total)) {
    const reading = each.origin === "measured" || each.origin === "entered" || each.id.startsWith("device/");
    if (!reading && !each.assumptionId) continue;
    kinds.set(each.group.id, (kinds.get(each.group.id) ?? false) || each.origin === "default");
  }
  const defaults = [...kinds.values()].filter(Boolean).length;
  return kinds.size > 0 ? defaults / kinds.size : 0;
}
