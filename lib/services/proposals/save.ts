import type { z } from "zod";
import { inTransaction } from "@/db/client";
import {
  insertProposal,
  insertProposalEvent,
  listVariants,
  type NewProposal,
  replaceVariants,
  updateProposal,
} from "@/db/queries/proposals";
import { listZones } from "@/db/queries/zones";
import { currencyDecimals } from "@/lib/money/money";
import { isOpen, STATUS_WORDS } from "@/lib/proposals/proposal-status";
import { actorName, requireFacilities } from "../authorise";
import { type Building, findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { findProposalOrRefuse, statusOf } from "./find";
import { type ProposalInput, proposalInput } from "./proposal-input";

/** Writes a new proposal as a draft. Returns its id. */
export function draftProposal(ctx: Context, buildingId: number, input: ProposalInput): number {
  const by = actorName(requireFacilities(ctx));
  const building = findBuildingOrRefuse(ctx, buildingId);
  const parsed = parseInput(proposalInput, input);
  refuseForeignZones(ctx, buildingId, parsed);
  return inTransaction(ctx.db, (tx) => {
    const { id } = insertProposal(tx, {
      ...rowOf(building, parsed),
      plan: parsed.plan,
      buildingId,
      createdBy: by,
      createdAtMs: ctx.now,
    });
    replaceVariants(tx, id, variantsOf(parsed));
    insertProposalEvent(tx, { proposalId: id, status: "draft", enteredBy: by, enteredAtMs: ctx.now });
    return id;
  });
}

/** Puts other words, levers and a plan in place. Only a draft and one that was sent back can be changed. */
export function reviseProposal(ctx: Context, buildingId: number, id: number, input: ProposalInput): void {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  findProposalOrRefuse(ctx, buildingId, id);
  const status = statusOf(ctx, id);
  if (!isOpen(status))
    throw new ServiceError(
      "precondition",
      `This proposal is ${STATUS_WORDS[status]}: its figures stand as issued. Have it sent back, or draft another.`,
    );
  const parsed = parseInput(proposalInput, input);
  refuseForeignZones(ctx, buildingId, parsed);
  const hadMinimum = JSON.stringify(minimumLevers(listVariants(ctx.db, id)));
  inTransaction(ctx.db, (tx) => {
    updateProposal(tx, id, rowOf(building, parsed));
    replaceVariants(tx, id, variantsOf(parsed));
    // A check of other minimums is none of these.
    if (JSON.stringify(minimumLevers(variantsOf(parsed))) !== hadMinimum)
      updateProposal(tx, id, { ventilationEngineer: null, ventilationCheckedOn: null, ventilationNote: "" });
  });
}

type Parsed = z.output<typeof proposalInput>;

const rowOf = (building: Pick<Building, "currency">, parsed: Parsed) =>
  ({
    title: parsed.title,
    reason: parsed.reason,
    seasonFromMonth: parsed.seasonFromMonth,
    seasonToMonth: parsed.seasonToMonth,
    fromMinute: parsed.fromMinute,
    toMinute: parsed.toMinute,
    investmentMinor: Math.round(parsed.investment * 10 ** currencyDecimals(building.currency)),
    plan: parsed.plan,
    chosenPosition: parsed.chosenPosition,
  }) satisfies Partial<NewProposal>;

const variantsOf = ({ variants }: Parsed) =>
  variants.map(({ name, levers }, position) => ({
    position,
    name,
    levers: levers.filter((each) => each.amount > 0),
  }));

const minimumLevers = (variants: readonly { levers: Parsed["variants"][number]["levers"] }[]) =>
  variants.map(({ levers }) => levers.filter((each) => each.lever === "minimum-airflow"));

function refuseForeignZones(ctx: Context, buildingId: number, { variants }: Parsed): void {
  const own = new Set(listZones(ctx.db, buildingId).map((each) => each.id));
  for (const { levers } of variants) {
    const stranger = levers.find((each) => !own.has(each.zoneId));
    if (stranger)
      throw new ServiceError("invalid", "A zone of this proposal is no longer in the building: choose again.");
  }
}
