/**
 * The change-point models of ASHRAE RP-1050 and Guideline 14: energy of an interval against its mean outdoor air
 * temperature. The names count the parameters, change points included.
 *
 *   2P  \        3PC      /    3PH  \         4P     /    5P  \      /
 *        \           ____/           \____       ___/          \____/
 */
export const MODEL_KINDS = ["2P", "3PC", "3PH", "4P", "5P"] as const;
export type ModelKind = (typeof MODEL_KINDS)[number];

/** Parameters counted in degrees of freedom: Guideline 14 counts change points, CalTRACK counts slopes only. */
export const PARAMETERS: Record<ModelKind, number> = { "2P": 2, "3PC": 3, "3PH": 3, "4P": 4, "5P": 5 };

/**
 * A model with its values. Energy in kWh an interval, slopes in kWh an interval and kelvin, temperatures in °C.
 * `base` is the energy at a change point; of 2P it is the energy at 0 °C.
 *
 * - 2P: base + slope · T
 * - 3PC: base + coolingSlope · max(0, T - coolingChangeC)
 * - 3PH: base + heatingSlope · max(0, heatingChangeC - T)
 * - 4P: base + leftSlope · min(0, T - changeC) + rightSlope · max(0, T - changeC)
 * - 5P: base + heatingSlope · max(0, heatingChangeC - T) + coolingSlope · max(0, T - coolingChangeC)
 */
export type ChangePointModel =
  | { kind: "2P"; base: number; slope: number }
  | { kind: "3PC"; base: number; coolingSlope: number; coolingChangeC: number }
  | { kind: "3PH"; base: number; heatingSlope: number; heatingChangeC: number }
  | { kind: "4P"; base: number; leftSlope: number; rightSlope: number; changeC: number }
  | {
      kind: "5P";
      base: number;
      heatingSlope: number;
      heatingChangeC: number;
      coolingSlope: number;
      coolingChangeC: number;
    };

/** Energy of an interval [kWh] at a mean outdoor air temperature. */
export function modelledEnergyKwh(model: ChangePointModel, outdoorC: number): number {
  switch (model.kind) {
    case "2P":
      return model.base + model.slope * outdoorC;
    case "3PC":
      return model.base + model.coolingSlope * Math.max(0, outdoorC - model.coolingChangeC);
    case "3PH":
      return model.base + model.heatingSlope * Math.max(0, model.heatingChangeC - outdoorC);
    case "4P": {
      const above = outdoorC - model.changeC;
      return model.base + (above < 0 ? model.leftSlope : model.rightSlope) * above;
    }
    case "5P":
      return (
        model.base +
        model.heatingSlope * Math.max(0, model.heatingChangeC - outdoorC) +
        model.coolingSlope * Math.max(0, outdoorC - model.coolingChangeC)
      );
  }
}

/**
 * Names of a model's parameters in the order of its sensitivities. `coolingSlope` is the slope above the last change
 * point, `heatingSlope` the one below the first (of 4P as kWh a kelvin of cooling down: its left slope turned round).
 */
export type ParameterName =
  | "base"
  | "slope"
  | "heatingSlope"
  | "heatingChangeC"
  | "coolingSlope"
  | "coolingChangeC"
  | "leftSlope"
  | "rightSlope"
  | "changeC";

export const PARAMETER_NAMES: Record<ModelKind, readonly ParameterName[]> = {
  "2P": ["base", "slope"],
  "3PC": ["base", "coolingSlope", "coolingChangeC"],
  "3PH": ["base", "heatingSlope", "heatingChangeC"],
  "4P": ["base", "leftSlope", "rightSlope", "changeC"],
  "5P": ["base", "heatingSlope", "heatingChangeC", "coolingSlope", "coolingChangeC"],
};

/** What an interval's modelled energy gains per unit of each parameter, at a temperature: one row of the Jacobian. */
export function sensitivities(model: ChangePointModel, outdoorC: number): number[] {
  const wing = (distance: number, slope: number, sign: 1 | -1): [number, number] =>
    distance > 0 ? [distance, sign * slope] : [0, 0];
  switch (model.kind) {
    case "2P":
      return [1, outdoorC];
    case "3PC":
      return [1, ...wing(outdoorC - model.coolingChangeC, model.coolingSlope, -1)];
    case "3PH":
      return [1, ...wing(model.heatingChangeC - outdoorC, model.heatingSlope, 1)];
    case "4P": {
      const above = outdoorC - model.changeC;
      return [1, Math.min(0, above), Math.max(0, above), above < 0 ? -model.leftSlope : -model.rightSlope];
    }
    case "5P":
      return [
        1,
        ...wing(model.heatingChangeC - outdoorC, model.heatingSlope, 1),
        ...wing(outdoorC - model.coolingChangeC, model.coolingSlope, -1),
      ];
  }
}
