import type { Working } from "@/lib/working/working";
import type { Assessed } from "../../overview-view-model";

/** The working that an address names: a component, `zone-<id>`, `electricity`, `heat`, `emissions` or `total`. */
export function workingById(assessed: Assessed, id: string): Working | null {
  const totals: Record<string, Working> = {
    total: assessed.working,
    electricity: assessed.energy.electricKwh.working,
    heat: assessed.energy.heatKwh.working,
    emissions: assessed.emissionsKgCo2.working,
  };
  const zone = assessed.zones.find((each) => `zone-${each.zoneId ?? "rest"}` === id);
  return totals[id] ?? zone?.working ?? assessed.components.find((each) => each.id === id)?.working ?? null;
}
