/** A person at a desk in summer, surfaces as warm as the air; 0.7 clo for those who feel the cold, 0.5 clo for the heat. */
export const DESK_CONDITION = { relAirSpeedMps: 0.1, relHumidityPct: 50, metabolicRateMet: 1.1 } as const;
export const COOL_CLOTHING_CLO = 0.7;
export const WARM_CLOTHING_CLO = 0.5;
