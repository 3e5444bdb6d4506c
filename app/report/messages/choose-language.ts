import { DE } from "./de";
import { EN } from "./en";
import { ES } from "./es";
import { FR } from "./fr";
import type { Messages } from "./messages";

/** Languages of the occupant's pages, as the chooser lists them. */
export const LANGUAGES: readonly Messages[] = [EN, ES, FR, DE];

export const messagesOf = (tag: string | undefined): Messages | undefined =>
  LANGUAGES.find((each) => each.tag === tag?.toLowerCase());

/**
 * The language that was chosen, else the first of an Accept-Language header that there is, by its weights (RFC 9110,
 * 12.5.4), else English. A region counts for its language.
 */
export function chooseLanguage(chosen: string | undefined, acceptLanguage: string | null): Messages {
  const wanted = (acceptLanguage ?? "")
    .split(",")
    .map((entry) => {
      const [tag = "", ...parameters] = entry.split(";").map((part) => part.trim());
      const weight = parameters.find((each) => each.startsWith("q="))?.slice(2);
      return { tag: tag.split("-")[0] ?? "", weight: weight === undefined ? 1 : Number(weight) };
    })
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight);
  return messagesOf(chosen) ?? wanted.map(({ tag }) => messagesOf(tag)).find((each) => each !== undefined) ?? EN;
}
