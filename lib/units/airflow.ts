/** One cubic foot per minute in m³/s: 0.3048³ / 60 exactly. */
export const M3PS_PER_CFM = 0.028316846592 / 60;

export const m3psFromCfm = (airflowCfm: number): number => airflowCfm * M3PS_PER_CFM;
export const cfmFromM3ps = (airflowM3ps: number): number => airflowM3ps / M3PS_PER_CFM;
export const m3psFromM3ph = (airflowM3ph: number): number => airflowM3ph / 3600;
export const m3psFromLps = (airflowLps: number): number => airflowLps / 1000;
