/** Values as posted, kept to fill the form again. */
export type PostedValues = Record<string, string>;

export const textOf = (values: PostedValues, name: string): string => (values[name] ?? "").trim();

/**
 * A typed number: "1,234.5" and "1 234.5" are read, an empty field is null, anything else is NaN, which the
 * use-case refuses with its own message. A lone comma is the decimal sign when no three digits follow it, and after a lone 0: "0,062" is no 62.
 */
export function numberOf(values: PostedValues, name: string): number | null {
  const typed = textOf(values, name).replace(/[\s\u00a0\u2009\u202f]/g, "");
  if (typed === "") return null;
  const plain = /^[-+\u2212]?[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(typed)
    ? typed.replaceAll(",", "")
    : typed.replace(/^([-+\u2212]?\d+),(\d+)$/, "$1.$2");
  return /^[-+\u2212]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain.replace("\u2212", "-")) : Number.NaN;
}

/** A number that must be there: an empty field is refused like one that is no number. */
export const requiredNumberOf = (values: PostedValues, name: string): number => numberOf(values, name) ?? Number.NaN;

export const checkedOf = (values: PostedValues, name: string): boolean => values[name] !== undefined;

/** One of a list, or the text as posted for the use-case to refuse. */
export const choiceOf = <T extends string>(values: PostedValues, name: string): T => textOf(values, name) as T;
