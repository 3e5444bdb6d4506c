import type { Evidence, Finding } from "@/lib/findings/finding";

export type ElectricalFindingCode =
  | "power-factor-unknown"
  | "small-current"
  | "resolution-unknown"
  | "current-above-plug"
  | "voltage-from-class"
  | "voltage-not-measured"
  | "nameplate-not-measured"
  | "class-default-used"
  | "class-default-differs"
  | "reading-implausibly-low"
  | "reading-implausibly-high";

/** The sentence for a finding about a setting's power: what, how much it matters, what to do. */
export function electricalFindingText({ code, evidence }: Finding<ElectricalFindingCode>): string {
  const of = (key: string): string => numberText(evidence, key);
  switch (code) {
    case "power-factor-unknown":
      return `Upper bound: a motor's power factor is below 1 and was not read, so the true power is ${of("powerW")} W or less (about ${of("likelyW")} W at a usual power factor of ${of("usualPowerFactor")}). A plug-in energy meter shows the watts.`;
    case "small-current":
      return `${of("currentA")} A is near the bottom of a clamp meter's range and can be off by ${of("halfWidthA")} A. Read it again through a ×10 loop of a line splitter, or with a plug-in energy meter.`;
    case "resolution-unknown":
      return `The meter's display resolution was not given and is taken as ${of("resolutionA")} A from the digits typed. Enter it to settle the range.`;
    case "current-above-plug":
      return `${of("currentA")} A is more than a 20 A plug is made for. Check the reading, and whether a ×10 loop was in use.`;
    case "voltage-from-class":
      return `No voltage was given; the nominal ${of("voltageV")} V of the device's class is used. Read it at the outlet with the device running.`;
    case "voltage-not-measured":
      return `The voltage is the nominal ${of("voltageV")} V, which supplies hold to about ± ${of("halfWidthV")} V. Reading it at the outlet narrows the range.`;
    case "nameplate-not-measured":
      return `Taken from the nameplate, not measured: a device in order draws between ${of("lowW")} and ${of("highW")} W at its rated voltage.`;
    case "class-default-used":
      return `Nothing was measured: ${of("powerW")} W (${of("lowW")} to ${of("highW")} W) is usual for a ${String(evidence.className)}.`;
    case "class-default-differs":
      return `${of("enteredW")} W is on record, but the class default is ${of("powerW")} W and is used. If the figure comes from a label or a meter, choose that basis.`;
    case "reading-implausibly-low":
      return `${of("powerW")} W is far below the ${of("lowW")} to ${of("highW")} W of its class. Were both wires of the cord in the jaws, the thermostat open, or another setting on?`;
    case "reading-implausibly-high":
      return `${of("powerW")} W is far above the ${of("lowW")} to ${of("highW")} W of its class. Was a ×10 loop in use, or another device on the same cord?`;
  }
}

function numberText(evidence: Evidence, key: string): string {
  const value = evidence[key];
  if (typeof value !== "number") return String(value ?? "");
  return String(value >= 100 ? Math.round(value) : Number(value.toPrecision(3)));
}
