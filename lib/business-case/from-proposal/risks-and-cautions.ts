import { CAUTIONS } from "@/lib/electrical/cautions";
import type { FrozenProposal, FrozenVariant } from "@/lib/proposals/frozen-proposal";
import type { ZoneLever } from "@/lib/proposals/lever";
import { formatNumber, formatTemperature, formatTemperatureDifference } from "@/lib/units/format";
import type { CaseInput } from "../case-input";

type Risk = CaseInput["risks"][number];

/** What may go wrong on either side, each with the answer that was set before the trial. */
export function risksOf({ plan, building, ventilationCheck, inputs }: FrozenProposal, chosen: FrozenVariant): Risk[] {
  const { stopRules, stepKPerWeek, switchback } = plan;
  const { idle, circuitRelief } = chosen.picture;
  const unit = building.temperatureUnit;
  const pace = switchback
    ? `Old and new settings alternate by weeks, ${switchback.pairs} pairs in a drawn order`
    : `The change is made by at most ${formatTemperatureDifference(stepKPerWeek, unit).text} a week`;
  const risks: Risk[] = [
    {
      side: "hot",
      risk: "Some people may be too warm.",
      answer: `${pace}; the trial stops at ${stopRules.hotReportsPerWeek} hot reports a week, at ${formatTemperature(stopRules.zoneAirTempC, unit).text} of zone air over an occupied day, or at ${stopRules.dissatisfiedPct} % predicted to be dissatisfied.`,
    },
    {
      side: "people",
      risk: "Heaters may stay although the air is warmer.",
      answer: `Only part of their energy is counted (${share(inputs.shared.heaterRemovalFraction.term.value)} where all of the cold is gone); desks are asked again after 4 and 12 weeks.`,
    },
    {
      side: "plant",
      risk: "The setting may be changed back in time.",
      answer: "The first year and the life of the change allow for it; the active setpoint is watched in the trends.",
    },
  ];
  if (idle.length > 0)
    risks.push({
      side: "cold",
      risk: `In ${idle.length} ${idle.length === 1 ? "place" : "places"} the chosen lever does nothing, and people stay cold there.`,
      answer:
        "No saving is counted there; the table of measures says why, and what holds the zone down must change first.",
    });
  if (chosen.levers.some(({ lever }) => lever === "minimum-airflow"))
    risks.push({
      side: "plant",
      risk: "A lower minimum airflow may fall below the ventilation that the code asks for.",
      answer: ventilationCheck
        ? `Checked by ${ventilationCheck.engineer} on ${ventilationCheck.onDate}: ${ventilationCheck.note}`
        : "Not approved before a named engineer has checked the ventilation; no check was on record at issue.",
    });
  if (chosen.levers.some(({ lever }) => lever === "supply-air-temp"))
    risks.push({
      side: "plant",
      risk: "Warmer supply air takes less moisture out.",
      answer: "The reset is given up on humid days; an engineer confirms the limit of humidity.",
    });
  if (circuitRelief.goneW > 0)
    risks.push({
      side: "people",
      risk: `Heaters of ${watts(circuitRelief.goneW)} at their high setting are expected to leave the circuits${circuitRelief.addedW > 0 ? `, and ${watts(circuitRelief.addedW)} to come in their place` : ""}.`,
      answer: "What each circuit may carry is for a licensed electrician to confirm.",
    });
  return risks;
}

const share = (fraction: number): string => `${formatNumber(fraction * 100, { decimals: 0 })} %`;
const watts = (powerW: number): string => `${formatNumber(powerW / 1000, { decimals: 1 })}\u00a0kW`;

/** The usual cautions with heaters, circuits and ventilation. */
export function cautionsOf(levers: readonly ZoneLever[]): CaseInput["cautions"] {
  const electrical = CAUTIONS.filter(({ id, topic }) => topic === "heater-in-use" || id === "electrician");
  const cautions = electrical.map(({ text, source }) => ({ text, source }));
  cautions.push({
    text: "People whose health asks for warmer or cooler air are asked for by name before the trial and are not part of an average.",
    source: "Common practice, no source",
  });
  if (levers.some(({ lever }) => lever === "minimum-airflow" || lever === "supply-air-temp" || lever === "schedule"))
    cautions.push({
      text: "Airflows, supply air and schedules serve ventilation and humidity as well: a licensed engineer confirms them by the code that applies before anything is changed.",
      source: "Common practice, no source",
    });
  return cautions;
}
