import type { Origin, Term, Working } from "@/lib/working/working";
import { type ClampInputs, clampInputs, motorPowerFactor } from "./clamp-power";
import { classSourceText, type DeviceClass } from "./device-classes";
import { settingLabel } from "./device-kind";
import { electricalFindingText } from "./findings";
import {
  clampHalfWidthA,
  isNear230V,
  POWER_FACTOR_HALF_WIDTH,
  USUAL_CLAMP_ACCURACY,
  voltageHalfWidthV,
} from "./measurement-uncertainty";
import type { SettingPowerOk, SettingReading } from "./setting-reading";
import { sourceOfHours, type UseBasis } from "./use-basis";
import { scaledRange, type ValueRange } from "./value-range";

export type WorkingInput = {
  reading: SettingReading;
  deviceClass: DeviceClass | null;
  power: SettingPowerOk;
  hoursPerYear: number;
  dutyFraction: number;
  useBasis?: UseBasis;
  price: {
    pricePerKwh: number;
    currency: string;
    origin: Origin;
    source?: string;
    assumptionId?: string;
    href?: string;
  };
  /** Page of the measurement sheet. */
  href?: string;
};

/** Workings of a setting's power (W), energy (kWh a year) and cost a year. Each holds the one before it as a term. */
export function settingWorkings(input: WorkingInput): { power: Working; energy: Working; cost: Working } {
  const power = powerWorking(input);
  const energyKwh = scaledRange(input.power.powerW, (input.hoursPerYear * input.dutyFraction) / 1000);
  const energy = energyWorking(input, power, energyKwh);
  return { power, energy, cost: costWorking(input, energy, energyKwh) };
}

function powerWorking(input: WorkingInput): Working {
  const { reading, deviceClass, power } = input;
  const label = `power at ${settingLabel(reading.settingName)}`;
  const notes = power.findings.map(electricalFindingText);
  const result = {
    symbol: "P",
    label: power.isUpperBound ? `${label}, upper bound` : label,
    value: power.powerW.value,
    unit: "W",
  };
  if (power.basis === "clamp" && reading.currentA !== null) {
    const voltageV = reading.voltageV ?? deviceClass?.nominalVoltageV ?? 0;
    return {
      formula: "P = V × I × PF",
      terms: clampTerms(clampInputs(reading, reading.currentA, voltageV), input),
      result,
      notes,
      source: "Active power of a single-phase load; range from JCGM 100:2008 with k = 2 (about 95 %)",
    };
  }
  const bases = {
    "plug-meter": {
      label: "power shown by the plug-in meter",
      origin: "measured",
      source: "Plug-in energy meter, ± 2 %",
    },
    nameplate: {
      label: "power on the nameplate",
      origin: "entered",
      source: "IEC 60335-1:2010, clause 10.1, accepted deviation (from memory)",
    },
    "class-default": {
      label: `usual power of a ${deviceClass?.label ?? "device"}`,
      origin: "default",
      source: deviceClass ? classSourceText(deviceClass) : "",
    },
    clamp: { label, origin: "measured", source: "" },
  } as const;
  const { origin, source, label: termLabel } = bases[power.basis];
  return {
    formula: "P = Pₛ",
    terms: [{ ...rangeTerm("Pₛ", termLabel, power.powerW, "W"), origin, source, href: input.href }],
    result,
    notes,
  };
}

function clampTerms(inputs: ClampInputs, { deviceClass, power, href }: WorkingInput): Term[] {
  const voltageA = voltageHalfWidthV({ voltageV: inputs.voltageV, measured: inputs.voltageMeasured });
  const currentA = clampHalfWidthA(inputs);
  return [
    {
      ...rangeTerm(
        "V",
        inputs.voltageMeasured ? "voltage at the outlet" : "nominal voltage",
        around(inputs.voltageV, voltageA),
        "V",
      ),
      origin: inputs.voltageMeasured ? "measured" : "default",
      source: voltageSource(inputs),
      href,
    },
    {
      ...rangeTerm("I", "current of the clamp meter", around(inputs.currentA, currentA), "A"),
      origin: "measured",
      source: clampSource(inputs),
      href,
    },
    powerFactorTerm(inputs, power.isUpperBound, deviceClass),
  ];
}

function clampSource(inputs: ClampInputs): string {
  const turns = inputs.turns > 1 ? ` in a loop of ${inputs.turns} turns` : "";
  const pct = inputs.accuracyPct ?? USUAL_CLAMP_ACCURACY.pct;
  const counts = inputs.accuracyCounts ?? USUAL_CLAMP_ACCURACY.counts;
  const stated = inputs.accuracyPct === null && inputs.accuracyCounts === null;
  return `Clamp meter${turns}, ± ${pct} % and ${counts} digits of ${inputs.resolutionA} A (${stated ? "common specification, from memory" : "as its maker states"})`;
}

function powerFactorTerm(inputs: ClampInputs, isUpperBound: boolean, deviceClass: DeviceClass | null): Term {
  if (isUpperBound) {
    const low = motorPowerFactor(deviceClass).low;
    return {
      ...rangeTerm("PF", "power factor, not read: 1 gives the upper bound", { value: 1, low, high: 1 }, ""),
      origin: "default",
      source: deviceClass?.kind === "personal-fan" ? classSourceText(deviceClass) : "Small fan motors (judgement)",
    };
  }
  const halfWidth = POWER_FACTOR_HALF_WIDTH[inputs.load];
  const range = {
    value: inputs.powerFactor,
    low: inputs.powerFactor - halfWidth,
    high: Math.min(1, inputs.powerFactor + halfWidth),
  };
  return {
    ...rangeTerm("PF", inputs.powerFactorKnown ? "power factor" : "power factor of a heating element", range, ""),
    origin: inputs.powerFactorKnown ? "entered" : "default",
    source: inputs.powerFactorKnown ? "As entered" : "Plain resistance; exceptions are heaters with electronic control",
  };
}

function voltageSource(inputs: ClampInputs): string {
  if (inputs.voltageMeasured) return "Read at the outlet, ± 1 %";
  return isNear230V(inputs.voltageV)
    ? "Supply tolerance ± 10 %, EN 50160 (from memory)"
    : "Supply tolerance ± 5 %, ANSI C84.1 range A (from memory)";
}

function energyWorking(input: WorkingInput, power: Working, energyKwh: ValueRange): Working {
  const { hoursPerYear, dutyFraction } = input;
  return {
    formula: "E = P × h × d / 1000",
    terms: [
      { ...rangeTerm("P", power.result.label, input.power.powerW, "W"), origin: "computed", working: power },
      {
        symbol: "h",
        label: "hours selected",
        value: hoursPerYear,
        unit: "h/year",
        origin: input.useBasis === "plug-logger" ? "measured" : "entered",
        source: sourceOfHours(input.useBasis ?? "entered"),
        href: input.href,
      },
      { symbol: "d", label: "duty cycle", value: dutyFraction, unit: "", origin: "entered", href: input.href },
    ],
    result: {
      symbol: "E",
      label: input.power.isUpperBound ? "energy a year, upper bound" : "energy a year",
      value: energyKwh.value,
      unit: "kWh/year",
    },
    notes: ["Hours and duty cycle count as exact; the range is that of the power."],
  };
}

function costWorking(input: WorkingInput, energy: Working, energyKwh: ValueRange): Working {
  const { pricePerKwh, currency, ...price } = input.price;
  return {
    formula: "K = E × p",
    terms: [
      { ...rangeTerm("E", energy.result.label, energyKwh, "kWh/year"), origin: "computed", working: energy },
      { symbol: "p", label: "electricity price", value: pricePerKwh, unit: `${currency}/kWh`, ...price },
    ],
    result: {
      symbol: "K",
      label: input.power.isUpperBound ? "cost a year, upper bound" : "cost a year",
      value: energyKwh.value * pricePerKwh,
      unit: `${currency}/year`,
    },
  };
}

const around = (value: number, halfWidth: number): ValueRange => ({
  value,
  low: Math.max(0, value - halfWidth),
  high: value + halfWidth,
});

const rangeTerm = (symbol: string, label: string, range: ValueRange, unit: string) => ({
  symbol,
  label,
  ...range,
  unit,
});
