import type { PlugSeries } from "./plug-series";
import type { PowerLevel } from "./power-levels";

/** Stands where no reading is held. */
export const NOT_LOGGED = 255;
/** A change of level counts once the power is past the border by a tenth of the way to the next level. */
const HYSTERESIS = 0.1;

/**
 * The level of every reading. With hysteresis: a reading near the border between two levels stays with the level before
 * it, so that noise there makes no switching.
 */
export function levelStates({ powerW, holdSeconds }: PlugSeries, levels: readonly PowerLevel[]): Uint8Array {
  const borders = levels.slice(1).map((level, at) => {
    const below = levels[at] as PowerLevel;
    const atW = level.fromW;
    return { atW, upW: atW + HYSTERESIS * (level.powerW - atW), downW: atW - HYSTERESIS * (atW - below.powerW) };
  });
  const states = new Uint8Array(powerW.length).fill(NOT_LOGGED);
  let state = -1;
  for (let i = 0; i < powerW.length; i++) {
    if (!((holdSeconds[i] as number) > 0)) {
      state = -1;
      continue;
    }
    const power = powerW[i] as number;
    let plain = 0;
    while (plain < borders.length && power >= (borders[plain]?.atW ?? Number.POSITIVE_INFINITY)) plain += 1;
    if (state < 0 || Math.abs(plain - state) > 1) state = plain;
    else if (plain > state && power >= (borders[state]?.upW ?? 0)) state = plain;
    else if (plain < state && power < (borders[plain]?.downW ?? 0)) state = plain;
    states[i] = state;
  }
  return states;
}
