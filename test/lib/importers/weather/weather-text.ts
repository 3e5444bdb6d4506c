/** Made-up weather files: a straight saw of temperatures by hour of day, so that every hour's value is known. */

export type MadeRow = { year: number; month: number; day: number; hour: number; dryBulb: string };

export const dryBulbAt = ({ month, hour }: { month: number; hour: number }): number => month + hour / 10;

/** Rows of a whole year, with 29 February when the year is a leap year. */
export function wholeYear(year = 2019): MadeRow[] {
  const rows: MadeRow[] = [];
  for (let at = Date.UTC(year, 0, 1); at < Date.UTC(year + 1, 0, 1); at += 86_400_000) {
    const date = new Date(at);
    const month = date.getUTCMonth() + 1;
    for (let hour = 1; hour <= 24; hour++) {
      rows.push({ year, month, day: date.getUTCDate(), hour, dryBulb: dryBulbAt({ month, hour }).toFixed(1) });
    }
  }
  return rows;
}

export const EPW_HEADER = [
  "LOCATION,Elm Field,XX,AAA,Made up,000000,41.98,-87.92,-6.0,201.0",
  "DESIGN CONDITIONS,0",
  "TYPICAL/EXTREME PERIODS,0",
  "GROUND TEMPERATURES,0",
  "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
  "COMMENTS 1,",
  "COMMENTS 2,",
  "DATA PERIODS,1,1,Data,Tuesday, 1/ 1,12/31",
];

export function epwText(rows: readonly MadeRow[], header: readonly string[] = EPW_HEADER): string {
  const lines = rows.map(
    ({ year, month, day, hour, dryBulb }) => `${year},${month},${day},${hour},0,?9,${dryBulb},1,50`,
  );
  return `${[...header, ...lines].join("\r\n")}\r\n`;
}

export function tmy3Text(rows: readonly MadeRow[]): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  const lines = rows.map(
    ({ year, month, day, hour, dryBulb }) => `${two(month)}/${two(day)}/${year},${two(hour)}:00,0,${dryBulb},A,7`,
  );
  const header = [
    '000000,"ELM FIELD, NORTH",XX,-6.0,41.980,-87.920,201',
    "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),Dry-bulb (C),Dry-bulb source,Dry-bulb uncert (code)",
  ];
  return [...header, ...lines].join("\n");
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
