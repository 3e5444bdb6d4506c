import type { CircuitDevice, CircuitFinding, CircuitInput } from "./assess-circuit";
import { plugFuse } from "./plug-fuse";
import { RULE_SETS } from "./rule-sets";

/** What the outlets and leads say, apart from the circuit: each by its own rule, whatever the verdict on the circuit. */
export function outletFindings(input: CircuitInput): CircuitFinding[] {
  return [...receptacle(input), ...twinSockets(input), ...sharedLeads(input)];
}

/** Cord-and-plug load on a receptacle of a circuit with several, by the nameplate (NEC 210.21(B)(2)). */
function receptacle({ code, devices, multiOutlet = false, receptacleRatingA }: CircuitInput): CircuitFinding[] {
  const rule = RULE_SETS[code].receptacleShare;
  if (!rule || !multiOutlet || !receptacleRatingA) return [];
  const limitA = receptacleLimitA(receptacleRatingA, rule.value);
  return devices
    .filter((device) => !device.fastened && ratedA(device) > limitA + 1e-9)
    .map((device) => ({
      code: "receptacle-over-limit" as const,
      severity: "caution" as const,
      evidence: {
        device: device.name,
        loadA: ratedA(device),
        limitA,
        receptacleRatingA,
        byLabel: typeof device.nameplateA === "number",
      },
    }));
}

export const receptacleLimitA = (receptacleRatingA: number, share: number): number => share * receptacleRatingA;

/** Both halves of one twin socket together (BS 1363-2). Devices of one record count, and those that name the same outlet. */
function twinSockets({ code, devices }: CircuitInput): CircuitFinding[] {
  const rule = RULE_SETS[code].twinSocketA;
  if (!rule) return [];
  return sharing(devices, ["twin-socket"])
    .filter(({ loadA }) => exceedsTwinSocket({ twinSocketRatingA: rule.value, loadA }))
    .map(({ outlet, loadA, names }) => ({
      code: "twin-socket-over-limit" as const,
      severity: "caution" as const,
      evidence: { outlet, devices: names, loadA, limitA: rule.value },
    }));
}

export const exceedsTwinSocket = (socket: { twinSocketRatingA: number; loadA: number }): boolean =>
  socket.loadA > socket.twinSocketRatingA;

/** Several devices on one fused lead: the fuse holds long after the lead is too warm (BS 1362). */
function sharedLeads({ code, devices }: CircuitInput): CircuitFinding[] {
  const rule = RULE_SETS[code].plugFuseA;
  if (!rule) return [];
  return sharing(devices, ["extension-lead", "power-strip"]).flatMap(({ outlet, loadA, names }) => {
    const { ratingMultiple, fuseBand } = plugFuse({ fuseRatingA: rule.value, loadA });
    if (fuseBand === "within-rating") return [];
    const evidence = { outlet, devices: names, loadA, fuseA: rule.value, ratingMultiple, fuseBand };
    return [{ code: "lead-over-fuse" as const, severity: "caution" as const, evidence }];
  });
}

function sharing(devices: readonly CircuitDevice[], kinds: readonly string[]) {
  const outlets = new Map<string, { outlet: string; loadA: number; names: string }>();
  devices.forEach((device, index) => {
    if (!device.outlet || !kinds.includes(device.outlet.kind)) return;
    const key = device.outlet.label || `#${index}`;
    const before = outlets.get(key);
    const loadA = (device.quantity ?? 1) * Math.max(0, ...Object.values(device.states));
    outlets.set(key, {
      outlet: device.outlet.label,
      loadA: (before?.loadA ?? 0) + loadA,
      names: before ? `${before.names}, ${device.name}` : device.name,
    });
  });
  return [...outlets.values()];
}

const ratedA = (device: CircuitDevice): number => device.nameplateA ?? Math.max(0, ...Object.values(device.states));
