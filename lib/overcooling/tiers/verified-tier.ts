import type { AssessmentInput, ProvenSaving } from "../assessment-input";
import { exact, type Input, type Quantity, type Step, step, sum } from "../calculation/quantity";
import { runStudy } from "../calculation/study";
import { type ComponentModel, NUMBERS, type TierModel, tierModel } from "../component-model";
import type { Plant } from "../plant";

/** Half the width of a symmetric triangle in standard deviations: it has the variance a²/6 (JCGM 100:2008, 4.3.9). */
const TRIANGLE = Math.sqrt(6);
/** Of the measured over the expected rise: beyond it the change was another than the one that was issued. Judgement. */
const RISE_RATIO = { least: 0.2, most: 5 };

/**
 * Tier 4: what a change was proved to save, carried to all of the overcooling of the same sort (reference J). The proof's
 * electricity, without the heaters', stands over what the model from below makes of the same change; the cost's components
 * that the change acts on are moved by that ratio. As with a meter the measurement is the total and the model only splits it
 * (reference I, rule 4), so that plant efficiency and heat loss are not in the range any more: the proof's own interval is.
 * Null without a proof, and where the model below has nothing of what was proved.
 */
export function verifiedTier(input: AssessmentInput, plant: Plant, below: TierModel): TierModel | null {
  const { proofs } = input;
  const ids = new Set<string>(proofs.flatMap((each) => each.parts));
  const moved = below.components.filter((each) => ids.has(each.id) && each.electric);
  if (proofs.length === 0 || moved.length === 0) return null;
  const modelled = sum({
    symbol: "E_b",
    label: "electricity of the components that the proved change acts on, as modelled from below",
    unit: "kWh a year",
    formula: "E_b = sum of the components",
    parts: moved.map(({ electric }) => {
      const quantity = electric as Quantity;
      return { symbol: quantity.symbol, label: quantity.label, quantity };
    }),
  });
  const statedKwh = runStudy([modelled], { seed: input.seed, draws: 1 }).stated(modelled);
  const factor = step({
    symbol: "k",
    label: "verified electricity over the modelled",
    unit: "",
    formula: "k = S / max(0.001, E_b)",
    terms: [verifiedElectricity(proofs, statedKwh), modelled],
    compute: (kwh, from) => kwh / Math.max(0.001, from),
    notes: ["The proof gives the total; the model gives only the shares of components and zones."],
  });
  const components = below.components.map((each) => (moved.includes(each) ? scaled(each, factor, plant) : each));
  return tierModel(4, components, input.currency);
}

/** Electricity of the year's overcooling by the proofs: as many times the proved saving as the model makes of both. */
function verifiedElectricity(proofs: readonly ProvenSaving[], statedKwh: number): Step {
  const modelledOfProofs = sum({
    symbol: "M",
    label: "saving of the proved changes on an occupied day, as modelled from below",
    unit: "kWh",
    formula: "M = sum of the proofs",
    parts: proofs.map((each) => ({
      symbol: `M_${each.proposalId}`,
      label: each.title,
      quantity: modelledSaving(each),
    })),
  });
  const proved = sum({
    symbol: "V",
    label: "saving of the proved changes on an occupied day, as measured, without heaters",
    unit: "kWh",
    formula: "V = sum of the proofs",
    parts: proofs.map((each) => ({ symbol: `V_${each.proposalId}`, label: each.title, quantity: provedSaving(each) })),
  });
  const stated = exact({
    symbol: "E_s",
    label: "electricity of those components at stated values",
    unit: "kWh a year",
    value: statedKwh,
    origin: "computed",
    source: "the model from below",
  });
  return step({
    symbol: "S",
    label: "electricity of the components that the proved change acts on, as verified",
    unit: "kWh a year",
    formula: "S = E_s * max(0, V) / M",
    terms: [stated, proved, modelledOfProofs],
    compute: (all, measured, model) => (all * Math.max(0, measured)) / model,
    notes: [
      "Zones that were not changed are taken to answer as those that were. The range is that of the proof; what the sensors, minimum airflows and heaters leave open stays in the other components.",
    ],
  });
}

const hrefOf = ({ proposalId }: ProvenSaving): string => `/proposals/${proposalId}/verification`;

function modelledSaving(proof: ProvenSaving): Step {
  const { proposalId: id, riseK, expectedRiseK, modelledAirKwh } = proof;
  const symbol = `M_${id}`;
  const asIssued = (symbol: string, label: string, value: number, unit: string): Input =>
    exact({
      symbol,
      label,
      unit,
      value,
      origin: "computed",
      source: `“${proof.title}” as issued`,
      href: `/proposals/${id}`,
    });
  return step({
    symbol,
    label: `modelled saving on an occupied day, ${proof.title}`,
    unit: "kWh",
    formula: `${symbol} = max(0.001, X_${id} * min(${RISE_RATIO.most}, max(${RISE_RATIO.least}, r_${id} / q_${id})))`,
    terms: [
      asIssued(`X_${id}`, "electricity of what follows the zone air, on an occupied day", modelledAirKwh, "kWh"),
      measured(proof, `r_${id}`, "rise of the zones' air, as measured", riseK, "K"),
      asIssued(`q_${id}`, "rise of the zones' air, as issued", expectedRiseK, "K"),
    ],
    compute: (kwh, rise, expected) =>
      Math.max(0.001, kwh * Math.min(RISE_RATIO.most, Math.max(RISE_RATIO.least, rise / expected))),
  });
}

function provedSaving(proof: ProvenSaving): Step {
  const { proposalId: id, measuredKwh, standardErrorKwh, heatersKwh } = proof;
  const symbol = `V_${id}`;
  return step({
    symbol,
    label: `measured saving on an occupied day without heaters, ${proof.title}`,
    unit: "kWh",
    formula: `${symbol} = v_${id} + z_${id} * u_${id} - h_${id}`,
    terms: [
      measured(proof, `v_${id}`, `electricity avoided over ${proof.days} occupied days`, measuredKwh, "kWh"),
      {
        ...measured(proof, `z_${id}`, "error of the proof, in standard errors", 0, ""),
        id: `proof/${id}`,
        group: { id: "proofs", label: "intervals of the proofs" },
        low: -TRIANGLE,
        high: TRIANGLE,
      },
      measured(proof, `u_${id}`, "standard error of the avoided electricity", standardErrorKwh, "kWh"),
      {
        ...measured(proof, `h_${id}`, "of it heaters given up, less what came in their place", heatersKwh.value, "kWh"),
        id: `proof-heaters/${id}`,
        group: { id: "proof-heaters", label: "heaters given up in the proofs" },
        low: heatersKwh.low,
        high: heatersKwh.high,
        origin: "computed",
        source: `“${proof.title}” as issued`,
        href: `/proposals/${id}`,
      },
    ],
    compute: (kwh, error, standardError, heaters) => kwh + error * standardError - heaters,
  });
}

const measured = (proof: ProvenSaving, symbol: string, label: string, value: number, unit: string): Input =>
  exact({
    symbol,
    label,
    unit,
    value,
    origin: "measured",
    source: `verification of “${proof.title}” on ${proof.foundOn}, ${proof.meter}`,
    href: hrefOf(proof),
  });

function scaled(component: ComponentModel, factor: Step, plant: Plant): ComponentModel {
  const symbol = `M_${NUMBERS[component.id]}`;
  return component.withElectricity(
    (electric) =>
      step({
        symbol,
        label: `${electric.label}, as verified`,
        unit: electric.unit,
        formula: `${symbol} = k * ${electric.symbol}`,
        terms: [factor, electric],
        compute: (k, kwh) => k * kwh,
      }),
    plant,
  );
}

/** "verified by “Second floor, warmer”": the proofs by name. */
export const verifiedWords = (proofs: readonly Pick<ProvenSaving, "title">[]): string =>
  `verified by ${proofs.map(({ title }) => `“${title}”`).join(", ")}`;
