const ON = new Set(
  "1|on|occ|occupied|occupancy|true|yes|active|enable|enabled|open|running|run|start|started|day|comfort|ein|belegt|marche|encendido".split(
    "|",
  ),
);
const OFF = new Set(
  "0|off|unocc|unoccupied|un-occupied|not occupied|false|no|inactive|disable|disabled|closed|stopped|stop|night|vacant|setback|unbelegt|aus|arrêt|apagado".split(
    "|",
  ),
);

/** 1 for occupied or on, 0 for unoccupied or off, null for any other word (`Standby` is neither). */
export function stateAsNumber(state: string): 0 | 1 | null {
  const word = state.trim().toLowerCase();
  return ON.has(word) ? 1 : OFF.has(word) ? 0 : null;
}
