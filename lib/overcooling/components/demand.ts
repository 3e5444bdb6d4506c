/** C6, what overcooling adds to the billed peak [kW]: heaters on at the peak, the cooling of their heat, and the setpoint below the target (reference T3). */
export function demandKw(i: {
  heaterKw: number;
  coincidence: number;
  heatLossKwPerK: number;
  belowTargetK: number;
  peakCoolingShare: number;
  cop: number;
}): number {
  const heaters = i.heaterKw * i.coincidence;
  const cooling = (i.heatLossKwPerK * i.belowTargetK * i.peakCoolingShare) / i.cop;
  return heaters + heaters / i.cop + cooling;
}
