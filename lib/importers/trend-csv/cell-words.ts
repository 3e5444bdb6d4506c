const words = (text: string): Set<string> => new Set(text.split("|"));

/** Texts that stand for "no value" whatever the point. */
const MISSING = words(
  "|-|--|---|----|-----|–|—|?|??|???|.|*|***|n/a|na|n.a.|#n/a|#n/a n/a|#na|nan|-nan|1.#qnan|1.#ind|null|(null)|<null>|none|nil|no data|nodata|no-data|no value|no reading|no sample|missing|blank|empty|undefined|unavailable|not available|#value!|#ref!|#div/0!|#num!|#name?|inf|-inf|infinity|keine daten|k.a.|sin datos|n.d.|n/d",
);
/** Texts that mean the same in a column of numbers, but could be a state of their own elsewhere. */
const FAILED = words(
  "bad|bad data|bad input|bad value|comm fail|comm failure|comm error|comm. fail|comm loss|comms fail|communication failure|communication error|communication lost|fail|failed|failure|fault|faulted|error|err|invalid|offline|off line|off-line|down|stale|timeout|time out|timed out|i/o timeout|io timeout|open|short|open circuit|short circuit|sensor fault|sensor failure|out of range|over range|under range|overrange|underrange|unreliable|disconnected|not connected|not responding|questionable|unknown|pt created|configure|shutdown|not found|scan off|scan timeout|no result|trouble|out of service",
);

/** Rows of a log about itself: switched on or off, clock set, buffer cleared, power lost. */
const EVENT =
  /^(?:(?:trend|log|logging|buffer|history|clock|time|power|device|system|controller|collection|recording)\b.{0,40}\b(?:disabled?|enabled?|changed?|chg|set|adjusted|synchroni[sz]ed|purged|cleared|full|started|stopped|start|stop|interrupted|resumed|reset|restarted|restart|lost|failed|failure|restored|on|off|up|down)\b|(?:enabled?|disabled?|started|stopped)\s+(?:log|logging|trend)\b|restart(?:ed)?\b.{0,30}|reboot(?:ed)?\b.{0,30}|daylight saving.{0,30})/i;

export const isMissingWord = (text: string): boolean => MISSING.has(text.trim().toLowerCase());
export const isFailureWord = (text: string): boolean => FAILED.has(text.trim().toLowerCase());
export const isEventText = (text: string): boolean => /\s/.test(text.trim()) && EVENT.test(text.trim());

/** First cells of rows that sum up a table. */
const SUMMARY =
  /^[\s*\-=#<[(]*(?:min(?:imum)?|max(?:imum)?|avg|average|mean|median|sum|total|totals|count|std|st\.? ?dev|standard deviation|total rows|rows|records|samples|end|eof|end of (?:file|report|data)|summary|report|generated|printed|note|notes|page|mittelwert|summe|promedio|moyenne)\b/i;
export const isSummaryText = (text: string): boolean => SUMMARY.test(text);
