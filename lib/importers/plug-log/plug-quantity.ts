/** What the numbers of a plug logger's file are. `energy-step` is the energy of each step, `energy-counter` a running total. */
export const PLUG_QUANTITIES = ["power", "current", "energy-step", "energy-counter"] as const;
export type PlugQuantity = (typeof PLUG_QUANTITIES)[number];

/** Units that a value column may be in, with the factor to W, A or kWh. */
export const PLUG_UNITS: Readonly<Record<string, { quantity: "power" | "current" | "energy"; factor: number }>> = {
  w: { quantity: "power", factor: 1 },
  watt: { quantity: "power", factor: 1 },
  watts: { quantity: "power", factor: 1 },
  kw: { quantity: "power", factor: 1000 },
  a: { quantity: "current", factor: 1 },
  amp: { quantity: "current", factor: 1 },
  amps: { quantity: "current", factor: 1 },
  ma: { quantity: "current", factor: 0.001 },
  wh: { quantity: "energy", factor: 0.001 },
  kwh: { quantity: "energy", factor: 1 },
};

export type DateOrder = "dmy" | "mdy";

/** What a person says of a file that the file does not say itself; null where it is to be found out. */
export type PlugLogAnswers = {
  /** Unit of the value column, a key of `PLUG_UNITS`. */
  unit: string | null;
  dateOrder: DateOrder | null;
  /** Energy readings that are a running total (`counter`) or the energy of each step (`step`). */
  energy: "counter" | "step" | null;
};
