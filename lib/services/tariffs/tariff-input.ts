import { z } from "zod";

const price = z
  .number("the price is no number.")
  .min(0, "the price cannot be negative.")
  .max(10_000, "the price is implausibly high.");

const period = z
  .object({
    name: z.string().min(1, "the period needs a name.").max(60, "keep the name under 60 characters."),
    pricePerKwh: price,
    months: z.array(z.number().int().min(1).max(12)).min(1, "give months such as Jun-Sep, or all."),
    weekdays: z.array(z.number().int().min(1).max(7)).min(1, "give days such as Mon-Fri, or all."),
    startMinute: z.number("give hours such as 12:00-18:00, or all.").int().min(0).max(1439),
    endMinute: z.number("give hours such as 12:00-18:00, or all.").int().min(1).max(1440),
  })
  .refine((each) => each.startMinute < each.endMinute, {
    path: ["endMinute"],
    message: "the period must end after it begins; for one over midnight give two lines.",
  });

const block = z.object({
  upToKwh: z.number("the end of the block is no number of kWh.").gt(0, "a block ends above 0 kWh.").nullable(),
  pricePerKwh: price,
});

const bill = z.object({
  energyKwh: z.number("the energy is no number of kWh.").min(0, "energy cannot be negative."),
  demandKw: z.number("the peak is no number of kW.").min(0, "a peak cannot be negative."),
});

/** How electricity is billed beyond one marginal price. */
export const tariffInput = z
  .object({
    energyKind: z.enum(["one-price", "time-of-use", "blocks"], "Say how the energy charge is made up."),
    periods: z.array(period),
    blocks: z.array(block),
    bills: z.array(bill).nullable(),
    ratchetFraction: z
      .number("Give the ratchet as a percentage.")
      .gt(0, "A ratchet lies above 0 %; leave it empty when there is none.")
      .max(1, "A ratchet is at most 100 %.")
      .nullable(),
  })
  .superRefine((value, refinement) => {
    const refuse = (path: string, message: string) => refinement.addIssue({ code: "custom", path: [path], message });
    if (value.energyKind === "time-of-use" && value.periods.length === 0)
      refuse("periods", "Give at least one period; all other hours have the price of the settings.");
    if (value.energyKind === "blocks" && value.blocks.length === 0) refuse("blocks", "Give at least one block.");
    value.blocks.forEach((each, k) => {
      const isLast = k === value.blocks.length - 1;
      const before = value.blocks[k - 1]?.upToKwh ?? 0;
      if ((each.upToKwh === null) !== isLast)
        refuse("blocks", "The last block, and only the last, is given as: above; price.");
      else if (each.upToKwh !== null && each.upToKwh <= before)
        refuse("blocks", `Line ${k + 1}: blocks must rise; ${each.upToKwh} kWh is not above ${before}.`);
    });
    if (value.bills && value.bills.length !== 12)
      refuse("bills", `Give twelve months, January to December; ${value.bills.length} are given.`);
    if (value.energyKind === "blocks" && !value.bills)
      refuse("bills", "Blocks need a year of bills: the price of a saved kWh depends on how much each month uses.");
    if (value.ratchetFraction !== null && !value.bills)
      refuse(
        "bills",
        "A ratchet needs a year of bills: what a lower peak saves depends on the peaks of the other months.",
      );
  });

export type TariffInput = z.input<typeof tariffInput>;
