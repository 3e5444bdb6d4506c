export type StatusMeaning = "good" | "flagged" | "bad";

const GOOD = new Set(
  "ok|okay|good|normal|valid|reliable|no fault|no-fault-detected|none|true|online|up|raw|actual".split("|"),
);
const FLAGGED =
  /^(?:in[ _-]?alarm|alarm|unack\w*|unacknowledged|unackedalarm|acknowledged|acked|overridden|override|over-?ride|manual|hand|operator|forced|estimated|interpolated|calculated|edited|uncertain|questionable|annotated)$/;
const BAD =
  /^(?:fault\w*|down|stale|null|disabled|bad|invalid|error|err|fail\w*|comm\b.*|offline|off-?line|out[ _-]?of[ _-]?service|unreliable\w*|not[ _-]?reliable|missing|no[ _-]?(?:data|sensor|value)|open[ _-]?(?:loop|circuit)|short\w*|over[ _-]?range|under[ _-]?range|timeout|suspect|false|nan)$/;

/**
 * What a status text says of its reading. In braces and commas it may hold several words: one bad word spoils the
 * reading; alarm and override leave it a reading. Null when a word is in no table.
 */
export function statusMeaning(text: string): StatusMeaning | null {
  let meaning = known.get(text);
  if (meaning !== undefined) return meaning;
  meaning = meaningOf(text);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(text, meaning);
  return meaning;
}

/** A log has a few status texts, each of them many times. */
const known = new Map<string, StatusMeaning | null>();
const MOST_KNOWN = 1_000;

function meaningOf(text: string): StatusMeaning | null {
  const words = text
    .trim()
    .replace(/^[{[(]|[}\])]$/g, "")
    .split(/[,;|]/)
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== "");
  let meaning: StatusMeaning | null = "good";
  for (const word of words) {
    if (BAD.test(word)) return "bad";
    if (FLAGGED.test(word)) meaning = "flagged";
    else if (!GOOD.has(word) && meaning === "good") meaning = null;
  }
  return meaning;
}
