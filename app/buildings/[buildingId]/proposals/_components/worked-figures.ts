import type { LivePicture, Worked } from "@/lib/proposals/live-picture";

/** Figures of a variant that open into their working, by the name that their address has. */
export const WORKED_FIGURES: Readonly<Record<string, (picture: LivePicture) => Worked | undefined>> = {
  saving: ({ saving }) => saving,
  electricity: ({ electricKwh }) => electricKwh,
  day: ({ electricPerDayKwh }) => electricPerDayKwh,
  heat: ({ heatKwh }) => heatKwh,
  carbon: ({ emissionsKgCo2 }) => emissionsKgCo2,
};
