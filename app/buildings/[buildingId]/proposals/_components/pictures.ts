import { livePicture } from "@/lib/proposals/live/live-picture";
import type { LiveBuilding } from "@/lib/proposals/live-building";
import type { LivePicture } from "@/lib/proposals/live-picture";
import { leversOf, nameField, usedPlaces, windowOf } from "../form";
import type { FormValues } from "../view-model";
import type { NamedPicture } from "./variant-figures";

/** Pictures by building and levers: a move of one variant's slider leaves the others as they are. */
const made = new WeakMap<LiveBuilding, Map<string, LivePicture>>();
const MOST_KEPT = 24;

function pictureOf(building: LiveBuilding, values: FormValues, place: number): LivePicture {
  const levers = leversOf(values, place).filter((each) => each.amount > 0);
  const window = windowOf(values);
  const key = JSON.stringify([levers, window]);
  const kept = made.get(building) ?? new Map<string, LivePicture>();
  made.set(building, kept);
  const known = kept.get(key);
  if (known) return known;
  const picture = livePicture(building, levers, window);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, picture);
  return picture;
}

/** The pictures of the variants in use, in their order. */
export const picturesOf = (building: LiveBuilding, values: FormValues): NamedPicture[] =>
  usedPlaces(values).map((place) => ({
    name: values[nameField(place)] ?? "",
    isChosen: values.chosen === String(place),
    picture: pictureOf(building, values, place),
  }));

/** Why levers do nothing, by zone and lever. */
export const idleIn = (pictures: readonly NamedPicture[]): Map<string, string> =>
  new Map(
    pictures.flatMap(({ picture }) =>
      picture.idle.map(({ zoneId, lever, reason }): [string, string] => [`${zoneId}/${lever}`, reason]),
    ),
  );
