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
  | "reading-implausibly-high"
  | "reading-ten-times"
  | "reading-a-tenth"
  | "below-nameplate"
  | "above-nameplate"
  | "voltage-drop"
  | "not-true-rms"
  | "less-trusted-basis"
  | "power-factor-read";

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
      if (evidence.expectedW !== undefined)
        return `${of("powerW")} W is next to nothing beside the ${of("expectedW")} W that the nameplate means at ${of("voltageV")} V. Round both conductors a clamp reads about zero: hold one, with a line splitter. Or the thermostat was open.`;
      return `${of("powerW")} W is far below the ${of("lowW")} to ${of("highW")} W of its class. Were both wires of the cord in the jaws, the thermostat open, or another setting on?`;
    case "reading-implausibly-high":
      return `${of("powerW")} W is far above the ${of("lowW")} to ${of("highW")} W of its class. Was a ×10 loop in use, or another device on the same cord?`;
    case "reading-ten-times":
      return `${of("powerW")} W is about ten times the ${of("expectedW")} W that the nameplate means at ${of("voltageV")} V. Was the clamp in the ×10 loop of the splitter? Then choose 10 turns.`;
    case "reading-a-tenth":
      return `${of("powerW")} W is about a tenth of the ${of("expectedW")} W that the nameplate means at ${of("voltageV")} V. Was the clamp in the plain loop after all? Then choose 1 turn.`;
    case "below-nameplate":
      return `${of("powerW")} W is ${of("ratio")} of the ${of("expectedW")} W that the nameplate means at ${of("voltageV")} V; 0.90 to 1.05 is usual. Was a lower step on, or did the thermostat cycle? Set it to its highest and read again after a minute.`;
    case "above-nameplate":
      return `${of("powerW")} W is ${of("ratio")} of the ${of("expectedW")} W that the nameplate means at ${of("voltageV")} V; 0.90 to 1.05 is usual. Is the label another model's, the voltage wrong, or another device on the same cord?`;
    case "voltage-drop":
      return `The outlet gives way by ${of("dropPct")} % under ${of("currentA")} A (loop of ${of("loopImpedanceOhm")} ohm); over 3 % points at a long or a poor connection. Ask a licensed electrician to look at the outlet and its circuit.`;
    case "not-true-rms":
      return `The meter is not a true-RMS one: on a heater whose electronics let half of each wave through it reads ${of("lowPct")} % too low. Read it again with a true-RMS meter, or with a plug-in energy meter.`;
    case "power-factor-read":
      return `Watts and amperes were both read: a power factor of ${of("powerFactor")} (${of("powerW")} W of ${of("apparentPowerVa")} VA).`;
    case "less-trusted-basis":
      return `The figure is taken from ${BASIS_WORDS[String(evidence.basis)]}, but ${BASIS_WORDS[String(evidence.onRecord)]} is on record and is surer. Choose that, or clear what does not hold.`;
  }
}

const BASIS_WORDS: Record<string, string> = {
  "plug-meter": "a plug-in meter's watts",
  clamp: "a clamp meter's current",
  nameplate: "the nameplate",
  "class-default": "the usual value of its sort",
};

function numberText(evidence: Evidence, key: string): string {
  const value = evidence[key];
  if (typeof value !== "number") return String(value ?? "");
  return String(value >= 100 ? Math.round(value) : Number(value.toPrecision(3)));
}
