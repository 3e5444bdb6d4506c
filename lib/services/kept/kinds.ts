import { SIDES } from "../both-sides/shown";
import { QUALITY, ZONE_QUALITY } from "../data-quality/read";
import { METER } from "../meter/read";
import { COST, FIGURE_WORKING, TARGET_CURVE } from "../overcooling/shown";
import { PROPOSAL_GROUND } from "../proposals/ground";
import { SETPOINT_MOVES } from "../proposals/setpoint-moves";
import { WATCHED_TRIALS } from "../proposals/watch";
import { ZONE_DAYS } from "../zones/days";
import { ZONES } from "../zones/shown";
import type { ResultKind } from "./result-kind";

const ALL: readonly ResultKind<unknown>[] = [
  ZONES,
  COST,
  QUALITY,
  FIGURE_WORKING,
  TARGET_CURVE,
  ZONE_DAYS,
  ZONE_QUALITY,
  METER,
  PROPOSAL_GROUND,
  SETPOINT_MOVES,
  WATCHED_TRIALS,
  SIDES,
];

const BY_NAME = new Map(ALL.map((kind) => [kind.name, kind]));

/** Kinds of a whole building: worked out without being asked for once its imports are through. */
export const OF_BUILDING: readonly string[] = [ZONES.name, COST.name, QUALITY.name];

export const findKind = (name: string): ResultKind<unknown> | undefined => BY_NAME.get(name);
