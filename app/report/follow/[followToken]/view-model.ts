import type { FollowedReport } from "@/lib/services/comfort-reports/follow";
import type { Messages } from "../../messages/messages";

/** A moment in the building's time and the reader's language. */
export const localTime = (atMs: number, { timeZone }: Pick<FollowedReport, "timeZone">, { tag }: Messages): string =>
  new Intl.DateTimeFormat(tag === "en" ? "en-GB" : tag, { dateStyle: "long", timeStyle: "short", timeZone }).format(
    atMs,
  );

/** The vote in the reader's words. */
export const scaleWord = (
  { thermalSensation }: Pick<FollowedReport, "thermalSensation">,
  { scale }: Messages,
): string => scale[String(thermalSensation) as keyof Messages["scale"]];
