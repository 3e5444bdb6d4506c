"use client";

import { currencySign } from "@/app/_components/quantity/money-figure";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { settingLabel } from "@/lib/electrical/device-kind";
import { deviceSheet, type SheetInput, type SheetLine } from "@/lib/electrical/device-sheet";
import { electricalFindingText } from "@/lib/electrical/findings";
import { deviceInputFromForm } from "../form";
import {
  hoursWords,
  lineFigures,
  originOf,
  type SheetCircuit,
  shareOfCircuit,
  sheetInputFromDevice,
  totalFigures,
} from "../view-model";
import styles from "./device-form.module.css";
import { SheetBars } from "./sheet-bars";

type Props = {
  typed: Record<string, string>;
  price: SheetInput["price"];
  circuit: SheetCircuit | null;
  buildingPath: string;
};

/** Watts, kWh a year and cost a year of every setting side by side, with the working of each. */
export function SheetResult({ typed, price, circuit, buildingPath }: Props) {
  const input = sheetInputFromDevice(deviceInputFromForm(typed), price);
  const sheet = deviceSheet(input);
  const totals = totalFigures(sheet);
  const refusal = sheet.energy.status === "refused" ? sheet.energy.message : null;
  return (
    <section className={styles.result} aria-label="Settings side by side">
      {refusal ? <p role="alert">{refusal}</p> : null}
      <DataTable
        caption="What each setting draws and costs"
        rows={sheet.lines}
        rowKey={(line) => line.name}
        columns={[
          { key: "name", head: "Setting", names: true, cell: (line) => settingLabel(line.name), total: "All settings" },
          { key: "origin", head: "Known by", cell: (line) => originOf(line.basis) },
          { key: "w", head: "Power", unit: "W", align: "number", cell: (line) => lineFigures(line).powerW },
          { key: "range", head: "Range", unit: "W", align: "number", cell: (line) => lineFigures(line).rangeW },
          { key: "hours", head: "Selected", unit: "h", align: "number", cell: hoursWords },
          {
            key: "kwh",
            head: "Energy a year",
            unit: "kWh",
            align: "number",
            cell: (line) => lineFigures(line).energyKwh,
            total: totals.energyKwh,
          },
          {
            key: "cost",
            head: "Cost a year",
            unit: currencySign(price.currency).trim(),
            align: "number",
            cell: (line) => lineFigures(line).cost,
            total: totals.cost,
          },
          ...(circuit
            ? [
                {
                  key: "share",
                  head: `Share of ${circuit.name}`,
                  unit: "%",
                  align: "number" as const,
                  cell: (line: SheetLine) => shareOfCircuit(line, circuit),
                },
              ]
            : []),
        ]}
        detail={(line) =>
          line.workings
            ? {
                summary: `Working of ${settingLabel(line.name)}`,
                content: <WorkingSheet working={line.workings.cost} buildingPath={buildingPath} />,
              }
            : null
        }
      />
      <SheetBars sheet={sheet} currency={price.currency} circuit={circuit} />
      <FindingsList
        label="What the sheet says of these readings"
        findings={sheet.lines.flatMap((line) =>
          line.power.status === "refused"
            ? [{ key: `${line.name}-refused`, severity: "disqualifies" as const, sentence: line.power.message }]
            : line.power.findings
                .filter((finding) => finding.severity !== "note")
                .map((finding) => ({
                  key: `${line.name}-${finding.code}`,
                  severity: finding.severity,
                  sentence: `${settingLabel(line.name)}: ${electricalFindingText(finding)}`,
                })),
        )}
      />
    </section>
  );
}
