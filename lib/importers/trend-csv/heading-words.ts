/** Lower case, with `_`, `-`, `.` and brackets as blanks, for comparing headings. */
export const plainHeading = (text: string): string =>
  text
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .replace(/[_\-./()[\]{}:]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();

const TIME_WORDS =
  /\b(?:times?|timestamps?|stamp|date|dates|datetime|datetimes|ts|when|clock|day|zeit|zeitpunkt|zeitstempel|datum|uhrzeit|fecha|hora|heure|horodatage|data|ora|tijd|tijdstip|sample rate|interval (?:start|end|beginning|ending)|hour(?: (?:ending|beginning|starting))?)\b/;
const POINT_WORDS =
  /^(?:points?|point ?names?|names?|tags?|tag ?names?|objects?|object ?names?|series|series ?names?|sensors?|sensor ?names?|channels?|variables?|parameters?|items?|measurements?|trends?|trend ?names?|metrics?|sources?|point ?ids?|datapoints?|data points?|device(?: names?)?|quantity|messpunkt|punto)$/;
const VALUE_WORDS =
  /^(?:values?|val|readings?|present values?|pv|results?|wert|messwert|valor|valeur|waarde|valore|data|amount|measured values?)$/;
const UNIT_WORDS =
  /^(?:units?|uom|eng(?:ineering)? units?|units? of measure|einheit|unidad(?:es)?|unit[ée]s?|eenheid)$/;
const STATUS_WORDS =
  /^(?:quality|data quality|quality codes?|status|status flags?|flags?|reliability|state|qual|qc|q|validity|valid|good|alarm status|qualit[äa]t)$/;
const INDEX_WORDS =
  /^(?:|#|no|nr|number|index|idx|id|row|rows|row ?(?:no|id|number)|record|records|record ?(?:no|id|number)|rec|seq|seq(?:uence)?(?: ?(?:no|number))?|line|item no|unnamed \d+(?: \d+)?)$/;
const COUNT_WORDS = /^(?:samples?|counts?|n|num(?:ber)?(?: of)? samples?|no of samples|sample counts?|points)$/;
const AVERAGE_WORDS = /^(?:avg|average|mean|mittel|mittelwert|promedio|moyenne|time (?:weighted )?average)$/;
const EXTREME_WORDS = /^(?:min|minimum|max|maximum|low|high|lowest|highest)$/;
const SPREAD_WORDS = /^(?:std|stdev|st dev|std dev|standard deviation|sum|total|first|last|median|range)$/;

export const isTimeHeading = (text: string): boolean => TIME_WORDS.test(plainHeading(text));
export const isPointHeading = (text: string): boolean => POINT_WORDS.test(plainHeading(text));
export const isValueHeading = (text: string): boolean => VALUE_WORDS.test(plainHeading(text));
export const isUnitHeading = (text: string): boolean => UNIT_WORDS.test(plainHeading(text));
export const isStatusHeading = (text: string): boolean => STATUS_WORDS.test(plainHeading(text));
export const isIndexHeading = (text: string): boolean => INDEX_WORDS.test(plainHeading(text));
export const isCountHeading = (text: string): boolean => COUNT_WORDS.test(plainHeading(text));
export const isAverageHeading = (text: string): boolean => AVERAGE_WORDS.test(plainHeading(text));
export const isExtremeHeading = (text: string): boolean => EXTREME_WORDS.test(plainHeading(text));
export const isSpreadHeading = (text: string): boolean => SPREAD_WORDS.test(plainHeading(text));
export const isOffsetHeading = (text: string): boolean =>
  /^(?:utc |gmt |tz |zone |time ?zone )?offset(?: (?:from )?(?:utc|gmt))?(?: (?:min|mins|minutes|h|hr|hrs|hours|s|sec|seconds))?$/.test(
    plainHeading(text),
  );
/** UTC said in the heading of the stamps: `Timestamp (UTC)`, `Time GMT`, `utc_time`. */
export const saysUtc = (text: string): boolean => /\b(?:utc|gmt|zulu)\b(?! ?[+-]\d)/.test(plainHeading(text));
/** Which end of its interval a stamp marks, by the heading. */
export function stampMark(text: string): "start" | "end" | "instant" {
  const plain = plainHeading(text);
  if (/\b(?:end|ending|ends|to|until|bis|ended)\b/.test(plain)) return "end";
  if (/\b(?:start|starting|starts|begin|beginning|begins|from|von)\b/.test(plain)) return "start";
  return "instant";
}
