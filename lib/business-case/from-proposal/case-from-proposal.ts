import { EMISSION_SCOPES } from "@/lib/assumptions/emissions";
import { currencyDecimals } from "@/lib/money/money";
import { overcoolingFindingWords } from "@/lib/overcooling/findings";
import type { FrozenProposal, FrozenVariant } from "@/lib/proposals/frozen-proposal";
import { hoursWords, seasonWords } from "@/lib/proposals/window-words";
import type { CaseFigure, CaseInput, CaseVariant } from "../case-input";
import { lifeOfFirstYear } from "../first-year-life";
import { assumptionsOf } from "./assumptions-of";
import { comfortLines } from "./comfort-lines";
import { measuresOf } from "./measures-of";
import { areReportsWithheld } from "./reports-withheld";
import { cautionsOf, risksOf } from "./risks-and-cautions";
import { trialWeeks, verificationPlan } from "./verification-plan";

/** All that a business case needs, read off a proposal as it was issued; `number` tells its issues apart. */
export function caseFromProposal(frozen: FrozenProposal, number: string): CaseInput {
  const chosen = chosenOf(frozen);
  const { building, proposal, inputs, plan, cost } = frozen;
  const { picture, levers, drawn } = chosen;
  const outlay = proposal.investmentMinor / 10 ** currencyDecimals(building.currency);
  return {
    schema: 1,
    number,
    issuedAtMs: frozen.issuedAtMs,
    issuedBy: frozen.issuedBy,
    building: {
      name: building.name,
      timeZone: building.timeZone,
      currency: building.currency,
      floorAreaM2: building.floorAreaM2,
    },
    proposal: {
      title: proposal.title,
      purpose: proposal.reason,
      season: seasonWords(proposal),
      hours: hoursWords(proposal),
      measures: measuresOf(frozen, chosen),
    },
    method: {
      tier: inputs.tier,
      label: inputs.tierLabel,
      costBefore: cost?.headline ?? null,
      isOfSeason: picture.electricPerDayKwh !== undefined,
    },
    saving: figureOf(picture.saving),
    savingDraws: drawn.draws.saving,
    lifeDraws: inputs.shared.changeKeptFraction.draws.map(lifeOfFirstYear),
    electricKwh: figureOf(picture.electricKwh),
    heatKwh: figureOf(picture.heatKwh),
    emissionsKgCo2: figureOf(picture.emissionsKgCo2),
    emissionScope: scopeWords(building.heatingFuel),
    parts: picture.parts
      .filter(({ stated }) => stated !== 0)
      .map(({ label, stated }) => ({ label, statedPerYear: stated })),
    variants: frozen.variants.map((each) => variantOf(each, each === chosen, inputs.reports)),
    comfort: comfortLines(picture, areReportsWithheld(inputs.reports, levers)),
    temps: picture.temps,
    circuits: picture.circuits ?? [],
    temperatureUnit: building.temperatureUnit,
    risks: risksOf(frozen, chosen),
    dataRemarks: (cost?.findings ?? []).map((finding) => ({
      severity: finding.severity,
      ...overcoolingFindingWords(finding),
    })),
    cautions: cautionsOf(levers),
    tornado: drawn.swings,
    terms: {
      outlay: outlay > 0 ? [{ label: "one-off cost, as entered with the proposal", amount: outlay }] : [],
      timing: "end",
    },
    verification: verificationPlan(plan, building.temperatureUnit),
    trialWeeks: trialWeeks(plan),
    assumptions: assumptionsOf(frozen, chosen),
  };
}

export function chosenOf({ variants, chosenVariantId }: FrozenProposal): FrozenVariant {
  const chosen = variants.find(({ variantId }) => variantId === chosenVariantId);
  if (!chosen) throw new Error(`the frozen proposal has no variant ${chosenVariantId}`);
  return chosen;
}

const figureOf = ({ p10, p50, p90, stated, working }: FrozenVariant["picture"]["saving"]): CaseFigure => ({
  p10,
  p50,
  p90,
  stated,
  working,
});

const rangeOf = ({ p10, p50, p90 }: FrozenVariant["picture"]["saving"]) => ({ p10, p50, p90 });

function variantOf(
  { name, picture, levers }: FrozenVariant,
  proposed: boolean,
  reports: FrozenProposal["inputs"]["reports"],
): CaseVariant {
  const reportsWithheld = areReportsWithheld(reports, levers);
  return {
    name,
    proposed,
    savingPerYear: rangeOf(picture.saving),
    electricKwh: rangeOf(picture.electricKwh),
    emissionsKgCo2: rangeOf(picture.emissionsKgCo2),
    outsideComfort: picture.outsideComfort.after,
    coldReportsPerYear: reportsWithheld ? null : (picture.cold?.after ?? null),
    hotReportsPerYear: reportsWithheld ? null : (picture.hot?.after ?? null),
    reportsWithheld,
  };
}

function scopeWords(heatingFuel: string): string {
  const electricity = `Electricity: ${EMISSION_SCOPES.electricity}.`;
  if (heatingFuel !== "gas" && heatingFuel !== "district") return electricity;
  return `${electricity} Heat: ${EMISSION_SCOPES[heatingFuel]}.`;
}
