import { expect, it } from "vitest";
import { readTariff, removeTariff, saveTariff } from "@/lib/services/tariffs/save";
import type { TariffInput } from "@/lib/services/tariffs/tariff-input";
import { smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";

const BILLS = Array.from({ length: 12 }, () => ({ energyKwh: 90_000, demandKw: 300 }));
const tariff = (changes: Partial<TariffInput> = {}): TariffInput => ({
  energyKind: "blocks",
  periods: [],
  blocks: [
    { upToKwh: 20_000, pricePerKwh: 0.11 },
    { upToKwh: null, pricePerKwh: 0.095 },
  ],
  bills: BILLS,
  ratchetFraction: 0.8,
  ...changes,
});

it("keeps a building's tariff with who entered it, in place of the one before, until it is taken away", () => {
  const { ctx, buildingId } = smallOffice();
  expect(readTariff(ctx, buildingId)).toBeNull();
  saveTariff(ctx, buildingId, tariff({ ratchetFraction: null }));
  saveTariff(ctx, buildingId, tariff());
  expect(readTariff(ctx, buildingId)).toMatchObject({ ...tariff(), enteredBy: "Robin Vale", enteredAtMs: ctx.now });
  removeTariff(ctx, buildingId);
  expect(readTariff(ctx, buildingId)).toBeNull();
});

it.each([
  ["blocks without bills", { bills: null }, "bills", /depends on how much each month uses/],
  [
    "a ratchet without bills",
    { energyKind: "one-price" as const, blocks: [], bills: null },
    "bills",
    /ratchet needs a year/,
  ],
  ["eleven bills", { bills: BILLS.slice(1) }, "bills", /11 are given/],
  [
    "falling blocks",
    {
      blocks: [
        { upToKwh: 500, pricePerKwh: 1 },
        { upToKwh: 400, pricePerKwh: 1 },
        { upToKwh: null, pricePerKwh: 1 },
      ],
    },
    "blocks",
    /Line 2: blocks must rise/,
  ],
  ["no last block", { blocks: [{ upToKwh: 500, pricePerKwh: 1 }] }, "blocks", /last block/],
  ["no period", { energyKind: "time-of-use" as const }, "periods", /at least one period/],
  ["a ratchet over 100 %", { ratchetFraction: 1.2 }, "ratchetFraction", /at most 100/],
  [
    "a price that is none",
    { blocks: [{ upToKwh: null, pricePerKwh: Number.NaN }] },
    "blocks.0.pricePerKwh",
    /no number/,
  ],
])("refuses %s, and keeps nothing of it", async (_, changes, field, message) => {
  const { ctx, buildingId } = smallOffice();
  const refusal = await refusalOf(() => saveTariff(ctx, buildingId, tariff(changes as Partial<TariffInput>)));
  expect(refusal.fieldErrors[field]).toMatch(message);
  expect(readTariff(ctx, buildingId)).toBeNull();
});

it("refuses a tariff beside a blended price", async () => {
  const { ctx, buildingId } = smallOffice({
    electricityPriceKind: "blended",
    demandPricePerKw: null,
    demandMonths: null,
  });
  expect((await refusalOf(() => saveTariff(ctx, buildingId, tariff()))).message).toMatch(/Give the marginal price/);
});
