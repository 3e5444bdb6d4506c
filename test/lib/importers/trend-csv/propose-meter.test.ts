import { expect, test } from "vitest";
import { convertToStored } from "@/lib/importers/trend-csv/convert-to-stored";
import { proposalBasis, proposeByBasis } from "@/lib/importers/trend-csv/propose-mapping";
import type { FileUnit } from "@/lib/importers/trend-csv/trend-file";
import { splitUnit } from "@/lib/importers/trend-csv/units";

const basis = proposalBasis([{ id: 1, code: "2-14", name: "Open office" }]);
const kindOf = (heading: string): string | null => {
  const { name, unit } = splitUnit(heading);
  const { kind, zoneId } = proposeByBasis(name, basis, unit);
  expect(zoneId).toBeNull();
  return kind;
};

test.each([
  ["kW", "meter-power"],
  ["kWh", "meter-energy"],
  ["KWH", "meter-energy"],
  ["Main Meter [kW]", "meter-power"],
  ["Main Meter [kWh]", "meter-energy"],
  ["WholeBuildingPower", "meter-power"],
  ["Building Electricity (kWh)", "meter-energy"],
  ["Electric Demand", "meter-power"],
])("%s is a meter of the building", (heading, kind) => {
  expect(kindOf(heading)).toBe(kind);
});

test.each(["Main Meter", "Electricity"])("%s is asked about", (heading) => {
  const proposal = proposeByBasis(heading, basis);
  expect(proposal).toMatchObject({ kind: null, skip: false });
  expect(proposal.reason).toContain("choose power, energy");
});

test.each(["Supply Fan kW", "Gas Meter", "Chiller kW", "CHW Meter kWh", "Plug Energy", "AHU-1 Power", "Heater Power"])(
  "%s is a part or another carrier, and no meter of the building",
  (heading) => {
    expect(kindOf(heading)).toBeNull();
  },
);

const stored = (kind: "meter-power" | "meter-energy", unit: FileUnit | null, values: number[]) =>
  convertToStored(
    {
      name: "Main Meter",
      kind: "numeric",
      unit,
      tsUtcSeconds: Float64Array.from(values, (_, i) => i * 900),
      values: Float64Array.from(values),
    },
    kind,
  );

test("power is stored in kW, energy in kWh of each interval, and neither in another unit", () => {
  expect(stored("meter-power", "W", [17_100, 0])).toMatchObject({ status: "ok", v: Int32Array.of(17_100, 0) });
  expect(stored("meter-power", "kW", [17.1])).toMatchObject({ status: "ok", v: Int32Array.of(17_100) });
  expect(stored("meter-energy", "kWh", [4.275])).toMatchObject({ status: "ok", v: Int32Array.of(4275) });
  for (const [kind, unit] of [
    ["meter-power", "kWh"],
    ["meter-energy", "kW"],
    ["meter-energy", null],
    ["meter-power", null],
  ] as const)
    expect(stored(kind, unit, [1]).status).toBe("unit-does-not-fit");
  expect(stored("meter-power", "kW", [-3, 5])).toMatchObject({ status: "ok", implausible: 1 });
});
