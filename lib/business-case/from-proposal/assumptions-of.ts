import { sourceText } from "@/lib/overcooling/assumption-inputs";
import type { FrozenProposal, FrozenVariant } from "@/lib/proposals/frozen-proposal";
import { assumptionsUsed, type Working } from "@/lib/working/working";
import { FINANCE_IDS } from "../case-finance";
import type { CaseAssumption } from "../case-input";

/** The assumptions that a case rests on, as they stood at issue, in the order of the assumptions page. */
export function assumptionsOf({ assumptions, inputs }: FrozenProposal, { picture }: FrozenVariant): CaseAssumption[] {
  const used = new Set<string>(FINANCE_IDS);
  const { saving, electricKwh, heatKwh, emissionsKgCo2 } = picture;
  const shared: Working = {
    formula: "",
    terms: Object.values(inputs.shared).map(({ term }) => term),
    result: { symbol: "", label: "", value: 0, unit: "" },
  };
  for (const working of [shared, saving.working, electricKwh.working, heatKwh.working, emissionsKgCo2.working])
    for (const id of assumptionsUsed(working)) used.add(id);
  return assumptions
    .filter(({ id }) => used.has(id))
    .map(({ id, label, value, low, high, unit, origin, source, override }) => ({
      id,
      label,
      value,
      low,
      high,
      unit,
      origin,
      source: override ? `${override.enteredBy}: ${override.reason}` : sourceText(source),
    }));
}
