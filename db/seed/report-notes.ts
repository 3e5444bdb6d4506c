import type { RandomSource } from "@/lib/statistics/random";
import { pick } from "./normal";

type Notes = readonly [string, ...string[]];

const COLD: Notes = [
  "Wearing a fleece indoors again.",
  "Fingers too cold to type.",
  "Cold since I came in this morning.",
  "It is warm outside and I am in a scarf.",
  "Blanket on my lap all afternoon.",
  "Feels like a refrigerator here.",
  "Went outside to warm up.",
  "Cold every day this week.",
  "Feet are freezing.",
  "Could somebody look at the thermostat?",
];
const DRAUGHT: Notes = [
  "Cold air falls on my neck from the vent above.",
  "Constant draught at this desk; two desks on it is fine.",
  "The vent blows straight at me.",
  "Draught from the ceiling whenever the air is on.",
];
const HOT: Notes = [
  "Too warm to think after lunch.",
  "Sun on the windows, blinds down, still hot.",
  "No air moving at all.",
  "Stuffy every afternoon.",
  "Fan on full and still warm.",
  "Hot since about two o'clock.",
];
const FINE: Notes = ["Comfortable today.", "Good this week, thank you.", "Just right."];

const SHARE_WITH_NOTE = 0.55;

/** A short note as an occupant might type it, or none. */
export function reportNote(random: RandomSource, about: "cold" | "draught" | "hot" | "fine"): string {
  if (random() >= SHARE_WITH_NOTE) return "";
  return pick(random, { cold: COLD, draught: DRAUGHT, hot: HOT, fine: FINE }[about]);
}
