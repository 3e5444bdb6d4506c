import { modelledEnergyKwh } from "@/lib/energy-model/change-point/change-point-model";
import { fitModel } from "@/lib/energy-model/change-point/fit-model";
import { type FitInput, readMeterYears } from "../data/meter-years";
import { contend, timed } from "./contend";

/** 5P of every meter, nothing compiled beforehand; the errors are summed afterwards, reading by reading. */
await contend<FitInput>(async (input) => {
  const years = readMeterYears(input);
  const models: ReturnType<typeof fitModel>[] = [];
  const ms = await timed(() => {
    for (const year of years) models.push(fitModel("5P", year));
  });
  const sse = years.map(({ outdoorC, energyKwh }, i) => {
    const model = models[i];
    if (!model) return null;
    return energyKwh.reduce((sum, y, k) => sum + (y - modelledEnergyKwh(model, outdoorC[k] as number)) ** 2, 0);
  });
  return { ms, sse };
});
