import type { MappingBasis } from "@/lib/electrical/circuit/circuit-kinds";

/** What the phone remembers between desks: where the walk stands, the meter, the circuit, the last sticker. */
export type WalkMemory = {
  floor: string | null;
  deskCode: string | null;
  meterKind: "plug-meter" | "clamp";
  meterName: string;
  meterResolutionA: string;
  circuitId: number | null;
  circuitMapping: MappingBasis;
  lastLabel: string;
  recentClasses: string[];
};

const NOTHING: WalkMemory = {
  floor: null,
  deskCode: null,
  meterKind: "plug-meter",
  meterName: "",
  meterResolutionA: "",
  circuitId: null,
  circuitMapping: "assumed",
  lastLabel: "",
  recentClasses: [],
};

const keyOf = (buildingId: number): string => `walk-memory-${buildingId}`;

/** A memory that cannot be read is none: it only saves taps. */
export function readMemory(buildingId: number): WalkMemory {
  try {
    return { ...NOTHING, ...JSON.parse(localStorage.getItem(keyOf(buildingId)) ?? "{}") };
  } catch {
    return NOTHING;
  }
}

export function writeMemory(buildingId: number, memory: WalkMemory): void {
  try {
    localStorage.setItem(keyOf(buildingId), JSON.stringify(memory));
  } catch {
    // Without it the next reload begins at the floors.
  }
}
