import { type LiveBuilding, SHARED_VALUES, type SharedNumbers } from "../live-building";

/** The shared values as stated. */
export const statedNumbers = ({ shared }: Pick<LiveBuilding, "shared">): SharedNumbers =>
  Object.fromEntries(SHARED_VALUES.map((name) => [name, shared[name].term.value])) as SharedNumbers;

/** The shared values of one draw. */
export function drawnNumbers({ shared }: Pick<LiveBuilding, "shared">, draw: number): SharedNumbers {
  return Object.fromEntries(SHARED_VALUES.map((name) => [name, shared[name].draws[draw] as number])) as SharedNumbers;
}

export const drawCount = ({ shared }: Pick<LiveBuilding, "shared">): number => shared.cop.draws.length;
