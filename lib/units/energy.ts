/** kWh in one therm (US, 100,000 Btu_IT at 1055.05585262 J): 29.3071. */
export const KWH_PER_THERM = 29.3071;
/** kW of heat moved by one ton of refrigeration (12,000 Btu/h). */
export const KW_PER_TON = 3.51685;
/** Btu/h in one watt. */
export const BTUH_PER_W = 3.41214;

export const kwhFromTherms = (therms: number): number => therms * KWH_PER_THERM;
export const thermsFromKwh = (energyKwh: number): number => energyKwh / KWH_PER_THERM;

/** Coefficient of performance (W/W) from a chiller's kW per ton or a unit's EER (Btu/Wh). */
export const copFromKwPerTon = (kwPerTon: number): number => KW_PER_TON / kwPerTon;
export const copFromEer = (eer: number): number => eer / BTUH_PER_W;
export const eerFromKwPerTon = (kwPerTon: number): number => 12 / kwPerTon;
