import { type KindProposal, proposeKind } from "./propose-kind";

const MOST_NAMES = 20_000;
const known = new Map<string, KindProposal>();

/** `proposeKind`, remembered: the parts of a long file ask for the same names again and again. */
export function kindOfName(name: string): KindProposal {
  let proposal = known.get(name);
  if (!proposal) {
    if (known.size >= MOST_NAMES) known.clear();
    proposal = proposeKind(name);
    known.set(name, proposal);
  }
  return proposal;
}
