import {
  type BranchCircuitRow,
  deviceIdsByCircuit,
  findBranchCircuit,
  listBranchCircuits,
} from "@/db/queries/branch-circuits";
import { type DeviceWithSettings, findDevice, listDevices } from "@/db/queries/devices";
import { assessCircuit, type CircuitAssessment, type CircuitInput } from "@/lib/electrical/circuit/assess-circuit";
import { continuousLimitA } from "@/lib/electrical/circuit/continuous-limit";
import { type DeviceLoad, deviceLoad } from "@/lib/electrical/circuit/device-load";
import { diversifiedLoad } from "@/lib/electrical/circuit/diversified-load";
import { type Relief, reliefOf } from "@/lib/electrical/circuit/relief";
import { RULE_SETS } from "@/lib/electrical/circuit/rule-sets";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { groupBy } from "../group-by";

export type CircuitDeviceView = { device: DeviceWithSettings; load: DeviceLoad; countsAsContinuous: boolean };

/** A circuit with what hangs on it and how it stands, with the rules that it was judged by. */
export type CircuitView = {
  circuit: BranchCircuitRow;
  devices: CircuitDeviceView[];
  input: CircuitInput;
  /** What its breaker may be planned for continuously [A]; null without a rating. */
  limitA: number | null;
  assessment: CircuitAssessment;
  relief: Relief[];
};

/** A run of this length or more makes a load continuous (NEC article 100, from memory). */
const CONTINUOUS_FROM_HOURS = 3;

export function circuitName({ panel, circuit }: Pick<BranchCircuitRow, "panel" | "circuit">): string {
  return `${panel}-${circuit}`;
}

export function readCircuits(ctx: Context, buildingId: number): CircuitView[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return circuitViews(ctx, buildingId);
}

/** The same for a use-case that has checked who asks. */
export function circuitViews(ctx: Context, buildingId: number): CircuitView[] {
  const onCircuit = deviceIdsByCircuit(ctx.db, buildingId);
  const devices = new Map(
    onCircuit.size === 0 ? [] : listDevices(ctx.db, buildingId).map((device) => [device.id, device]),
  );
  return listBranchCircuits(ctx.db, buildingId).map((circuit) =>
    viewOf(
      circuit,
      (onCircuit.get(circuit.id) ?? []).flatMap((id) => devices.get(id) ?? []),
    ),
  );
}

/** One circuit; `leaving` are ids of devices to think away for a look at what would be. */
export function readCircuit(
  ctx: Context,
  buildingId: number,
  circuitId: number,
  leaving: readonly number[] = [],
): CircuitView & { without: CircuitAssessment | null } {
  requireFacilities(ctx);
  const circuit = findBranchCircuit(ctx.db, buildingId, circuitId);
  if (!circuit) throw new ServiceError("not-found", "This circuit does not exist.");
  const ids = deviceIdsByCircuit(ctx.db, buildingId).get(circuitId) ?? [];
  const view = viewOf(
    circuit,
    ids.flatMap((id) => findDevice(ctx.db, buildingId, id) ?? []),
  );
  const gone = new Set(leaving.filter((id) => ids.includes(id)));
  const without =
    gone.size === 0
      ? null
      : viewOf(
          circuit,
          view.devices.flatMap(({ device }) => (gone.has(device.id) ? [] : device)),
        ).assessment;
  return { ...view, without };
}

/** Load of a panel's heaters and fans as its feeder sees it, by the office allowance of the United Kingdom. */
export type FeederLoad = { panel: string; circuits: number; diversifiedA: number; diversityFactor: number };

/** Panels with several circuits by British rules; for demand only, never for a verdict. */
export function feederLoads(views: readonly CircuitView[]): FeederLoad[] {
  const british = views.filter(({ circuit }) => circuit.ruleSet === "iec-uk-2018");
  return [...groupBy(british, ({ circuit }) => circuit.panel)].flatMap(([panel, members]) => {
    const currentsA = members.flatMap(({ devices }) =>
      devices.flatMap(({ load }) => (load.status === "ok" ? load.currentA : [])),
    );
    return currentsA.length > 1 ? { panel, circuits: members.length, ...diversifiedLoad(currentsA) } : [];
  });
}

/** Names to choose from. */
export function readCircuitNames(
  ctx: Context,
  buildingId: number,
): { id: number; name: string; breakerRatingA: number | null }[] {
  requireFacilities(ctx);
  return listBranchCircuits(ctx.db, buildingId).map((circuit) => ({
    id: circuit.id,
    name: circuitName(circuit),
    breakerRatingA: circuit.breakerRatingA,
  }));
}

function viewOf(circuit: BranchCircuitRow, found: readonly DeviceWithSettings[]): CircuitView {
  const devices = found.map((device): CircuitDeviceView => {
    const deviceClass = deviceClassById(device.deviceClass);
    const nominalV = circuit.voltageV ?? deviceClass?.nominalVoltageV ?? 120;
    return {
      device,
      load: deviceLoad({ ...device, deviceClass }, nominalV),
      countsAsContinuous: device.longestRunHours === null || device.longestRunHours >= CONTINUOUS_FROM_HOURS,
    };
  });
  const input: CircuitInput = {
    ...circuit,
    code: circuit.ruleSet,
    continuousFactor: circuit.listedFor100Percent ? 1 : RULE_SETS[circuit.ruleSet].continuousFactor.value,
    unknownLoads: devices.flatMap(({ device, load }) => (load.status === "unknown" ? device.label : [])),
    devices: devices.flatMap(({ device, load, countsAsContinuous }) =>
      load.status === "unknown"
        ? []
        : {
            name: device.label,
            nameplateA: load.nameplateA,
            states: { highest: load.currentA },
            basis: load.basis,
            continuous: countsAsContinuous,
            fastened: device.isFastened,
            mapping: device.circuitMapping,
            outlet: { kind: device.outletKind, label: device.outletLabel },
            readingNotTrusted: load.readingNotTrusted,
          },
    ),
  };
  const limitA =
    circuit.breakerRatingA === null || input.continuousFactor === undefined
      ? null
      : continuousLimitA(circuit.breakerRatingA, input.continuousFactor);
  return { circuit, devices, input, limitA, assessment: assessCircuit(input), relief: reliefOf(input) };
}
