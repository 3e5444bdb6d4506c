/** An amount in whole minor units (cents, pence, yen) of an ISO 4217 currency. */
export type Money = { minorUnits: number; currency: string };

/** Decimals of a currency by the runtime's ISO 4217 table (2 for USD, 0 for JPY, 3 for KWD). */
export function currencyDecimals(currency: string): number {
  return new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/** True for a currency code that the runtime knows. */
export function isCurrency(code: string): boolean {
  return /^[A-Z]{3}$/.test(code) && Intl.supportedValuesOf("currency").includes(code);
}

/** Rounds half to even to the currency's minor unit. `amount` is in major units (dollars). */
export function moneyFromAmount(amount: number, currency: string): Money {
  return { minorUnits: roundHalfEven(amount * 10 ** currencyDecimals(currency)), currency };
}

export const amountFromMoney = (money: Money): number => money.minorUnits / 10 ** currencyDecimals(money.currency);

/** Rounds to the nearest integer, ties to the even one (IEEE 754 roundTiesToEven). */
export function roundHalfEven(value: number): number {
  const floor = Math.floor(value);
  const fraction = value - floor;
  if (Math.abs(fraction - 0.5) > 1e-9) return Math.round(value);
  return floor % 2 === 0 ? floor : floor + 1;
}
