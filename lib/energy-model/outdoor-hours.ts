/** A supply and return air temperature between which the economizer hands over to the plant. */
export type EconomizerAir = { supplyAirTempC: number; returnAirTempC: number };

/** Sums over the occupied hours of a year by outdoor temperature, each in the time of a binary search. */
export type OutdoorHours = {
  /** Occupied hours of the year. */
  totalHours: number;
  /** Hours with outdoor air at or above a temperature. */
  hoursAtOrAbove(tempC: number): number;
  /** Sum of max(0, T_o - base) over the hours [K·h] (reference Q2). */
  degreeHours(baseC: number): number;
  /** The same weighted by the mechanical fraction m(T_o) of an economizer [K·h] (reference Q2 with Q5). */
  mechanicalDegreeHours(input: EconomizerAir & { baseC: number }): number;
  /** Mean of m(T_o) over the hours at or above the supply air temperature; 0 where there is none. */
  meanMechanicalFraction(air: EconomizerAir): number;
};

/**
 * Prepares a year for thousands of evaluations: hours sorted by outdoor temperature, with running sums of their
 * weight, weight · T and weight · T² from the warm end. m(T_o) · (T_o - base) is a polynomial between the supply and
 * the return air temperature, so the sums give it exactly, without bins. `weight` is the occupied part of each hour.
 */
export function outdoorHours(outdoorAirTempC: ArrayLike<number>, weight: ArrayLike<number>): OutdoorHours {
  if (outdoorAirTempC.length !== weight.length) {
    throw new RangeError("each outdoor temperature needs the occupied part of its hour");
  }
  const order = Array.from({ length: outdoorAirTempC.length }, (_, i) => i).filter((i) => (weight[i] as number) > 0);
  order.sort((a, b) => (outdoorAirTempC[a] as number) - (outdoorAirTempC[b] as number));
  const temp = Float64Array.from(order, (i) => outdoorAirTempC[i] as number);
  const [s0, s1, s2] = [0, 1, 2].map(() => new Float64Array(order.length + 1)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let k = order.length - 1; k >= 0; k--) {
    const w = weight[order[k] as number] as number;
    const t = temp[k] as number;
    s0[k] = (s0[k + 1] as number) + w;
    s1[k] = (s1[k + 1] as number) + w * t;
    s2[k] = (s2[k + 1] as number) + w * t * t;
  }

  /** Index of the first hour at or above a temperature. */
  const from = (tempC: number): number => {
    let low = 0;
    let high = temp.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((temp[middle] as number) < tempC) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const at = (sums: Float64Array, k: number): number => sums[k] as number;
  const degreeHours = (baseC: number): number => {
    const k = from(baseC);
    return at(s1, k) - baseC * at(s0, k);
  };

  return {
    totalHours: at(s0, 0),
    hoursAtOrAbove: (tempC) => at(s0, from(tempC)),
    degreeHours,
    mechanicalDegreeHours({ baseC, supplyAirTempC: sat, returnAirTempC: ra }) {
      const start = from(Math.max(baseC, sat));
      const full = Math.max(start, from(ra));
      const n = at(s0, start) - at(s0, full);
      const sum = at(s1, start) - at(s1, full);
      const squares = at(s2, start) - at(s2, full);
      const partly = ra > sat ? (squares - (sat + baseC) * sum + sat * baseC * n) / (ra - sat) : 0;
      return partly + at(s1, full) - baseC * at(s0, full);
    },
    meanMechanicalFraction({ supplyAirTempC: sat, returnAirTempC: ra }) {
      const start = from(sat);
      const full = Math.max(start, from(ra));
      const season = at(s0, start);
      if (season === 0) return 0;
      const n = season - at(s0, full);
      const partly = ra > sat ? (at(s1, start) - at(s1, full) - sat * n) / (ra - sat) : 0;
      return (partly + at(s0, full)) / season;
    },
  };
}
