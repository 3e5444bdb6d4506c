import type { BuildingRow } from "@/db/queries/buildings";
import { coolingWing } from "@/lib/energy-model/change-point/setpoint-shift";
import type { MeterModel } from "@/lib/energy-model/meter/meter-model";
import type { MeteredCooling, MeteredDays, UnusedMeters } from "@/lib/overcooling/assessment-input";
import type { Context } from "../context";
import type { BuildingAnalysis } from "../zone-analysis/read";
import { type Meter, metersOf } from "./meters";
import { modelYear } from "./model-year";
import { meterResult } from "./read";

/**
 * The meter that calibrates a building's cost: of those whose model says what a setpoint is worth an interval meter before
 * bills, and then the model with the least scatter. Each is a meter of the whole building, so they are never added up.
 */
export async function meteredCooling(
  ctx: Context,
  building: BuildingRow,
  analysis: BuildingAnalysis,
): Promise<MeteredCooling | UnusedMeters | null> {
  const meters = metersOf(ctx, building.id);
  if (meters.length === 0) return null;
  const usable: { meter: Meter; model: MeterModel }[] = [];
  for (const meter of meters) {
    const { model, worth } = await meterResult(ctx, building, meter, analysis);
    if (model?.status === "ok" && worth) usable.push({ meter, model });
  }
  usable.sort(
    (a, b) => Number(a.meter.source === "bills") - Number(b.meter.source === "bills") || scatter(a) - scatter(b),
  );
  const [best] = usable;
  if (!best) return { status: "unused", meters: meters.map((each) => each.name) };
  const { meter, model } = best;
  const year = modelYear(ctx, building, model);
  const days = model.types.flatMap(({ type, choice }): MeteredDays[] => {
    const days = year.types.find((each) => each.type === type);
    if (choice.status !== "ok" || !days || coolingWing(choice.chosen.model) === null) return [];
    const { model: fitted, errors, goodness } = choice.chosen;
    const { outdoorC, daysEach } = days;
    return [
      {
        type,
        fit: { model: fitted, errors },
        readings: goodness.n,
        outdoorC: Array.from(outdoorC),
        daysEach: Array.from(daysEach),
      },
    ];
  });
  return { status: "ok", meter: meter.name, href: `/energy-meter?meter=${meter.key}`, year: year.name, days };
}

function scatter({ model }: { model: MeterModel }): number {
  const [main] = model.types;
  return main?.choice.status === "ok" ? main.choice.chosen.goodness.cvRmse : Number.POSITIVE_INFINITY;
}
