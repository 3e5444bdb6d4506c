/** Drop of a branch circuit above which an electrician is asked: 3 %, an informational note to NEC 210.19 (from memory). */
export const LARGEST_BRANCH_DROP = 0.03;

/** Drop of an outlet's voltage under a load as a share of the open voltage, and the impedance of the loop in ohm (Ohm's law). */
export function voltageUnderLoad(read: { openVoltageV: number; loadVoltageV: number; currentA: number }): {
  dropFraction: number;
  loopImpedanceOhm: number;
} {
  const dropV = read.openVoltageV - read.loadVoltageV;
  return { dropFraction: dropV / read.openVoltageV, loopImpedanceOhm: dropV / read.currentA };
}
