/**
 * Devices to be metered so that their mean is known to a relative precision: n0 = (z · cv / e)², and of a finite number
 * of devices n = n0 / (1 + n0 / N), rounded up (IPMVP / FEMP sampling, from memory).
 */
export function sampleSize(input: {
  z: number;
  variationFraction: number;
  precisionFraction: number;
  devices: number;
}): {
  ofMany: number;
  ofThese: number;
  toMeter: number;
} {
  const ofMany = ((input.z * input.variationFraction) / input.precisionFraction) ** 2;
  const ofThese = ofMany / (1 + ofMany / input.devices);
  return { ofMany, ofThese, toMeter: Math.ceil(ofThese) };
}
