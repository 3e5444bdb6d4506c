import { nameWords } from "./name-words";

/** Words that say what a point measures or does; the rest of a name is the equipment or zone it belongs to. */
const ROLE_WORDS = new Set(
  "zn znt zt rmt temp tmp temperature temperatur t sp stpt setpt setpoint spt set point csp hsp clg cool cooling htg heat heating reheat rht act actual active eff effective cur current occ occupied occupancy unocc unoccupied ngt night setback stby standby sup supply da dat discharge disch sa sat dis air flow flo airflow cfm dpr damper dmpr vlv valve o c out output cmd command pos position avg average space spc sensor value mode status sts stat pct pv raumtemperatur soll sollwert".split(
    " ",
  ),
);
const PLACE_WORDS = new Set(["zone", "rm", "room", "raum", "zn"]);

/** Words of a name less its role: the box, room or zone it belongs to. `ZN03` is a zone number, `ZN-T` a role. */
export function equipmentWords(name: string): string[] {
  const words = nameWords(name);
  return words.filter((word, i) => {
    const isNumber = /^\d/.test(words[i + 1] ?? "");
    if (PLACE_WORDS.has(word)) return isNumber;
    return !ROLE_WORDS.has(word) || (isNumber && word.length === 1 && i === 0);
  });
}

/** Equipment words run together: `VAV-2-14_ZN-T` and `VAV_214 ZN-T` both give `vav214`. */
export const equipmentKey = (name: string): string => equipmentWords(name).join("");

/** What the names of one building spell like `2-14` in one and `21-4` in another, by its key run together. */
export type AmbiguousKeys = ReadonlyMap<string, readonly string[]>;

/**
 * Keys that stand for more than one box once their dashes are gone: `2-14` and `21-4` are both `214`. Names and zone
 * codes are given together; a spelling without dashes takes no side.
 */
export function ambiguousKeys(names: readonly string[]): AmbiguousKeys {
  const spellings = new Map<string, Set<string>>();
  for (const name of names) {
    const words = equipmentWords(name);
    if (words.filter((word) => /^\d+$/.test(word)).length < 2) continue;
    const key = digitsOf(words.join(""));
    const spelled = words.filter((word) => /^\d+$/.test(word)).join("-");
    spellings.set(key, (spellings.get(key) ?? new Set()).add(spelled));
  }
  return new Map([...spellings].filter(([, set]) => set.size > 1).map(([key, set]) => [key, [...set].sort()]));
}

/** The other spellings that a name's number may stand for, or none. */
export function spellingsOf(name: string, ambiguous: AmbiguousKeys): readonly string[] {
  return ambiguous.get(digitsOf(equipmentKey(name))) ?? [];
}

export const digitsOf = (text: string): string => text.replace(/\D/g, "");
