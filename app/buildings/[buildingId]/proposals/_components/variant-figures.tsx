import type { ReactNode } from "react";
import { formatFigure } from "@/app/_components/quantity/format-figure";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { Range } from "@/app/_components/quantity/range";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import type { ExpectedReports, LivePicture, Worked } from "@/lib/proposals/live-picture";
import { OpenedContent } from "./opened-content";

export type NamedPicture = { name: string; isChosen: boolean; picture: LivePicture };

type Props = {
  variants: readonly NamedPicture[];
  currency: string;
  investment: number;
  buildingPath: string;
  isLive?: boolean;
};

type Line = {
  id: string;
  label: string;
  cell: (picture: LivePicture) => ReactNode;
  worked?: (picture: LivePicture) => Worked;
};

const percent = (share: number): string => `${formatFigure(100 * share, { decimals: 1 })}\u202f%`;
const reports = ({ before, after, low, high }: ExpectedReports): string =>
  `${formatFigure(before, { decimals: 0 })} \u2192 ${formatFigure(after, { decimals: 1 })} (${formatFigure(low, { decimals: 1 })}\u2013${formatFigure(high, { decimals: 1 })})`;

/** Variants side by side: what a year of each brings, with ranges, and workings to open. */
export function VariantFigures({ variants, currency, investment, buildingPath, isLive = false }: Props) {
  const sign = currencySign(currency);
  const lines: Line[] = [
    {
      id: "saving",
      label: "Saving in the first year",
      cell: ({ saving }) => <Range range={saving} unit="" prefix={sign} />,
      worked: ({ saving }) => saving,
    },
    {
      id: "payback",
      label: "Simple payback of the one-off cost",
      cell: ({ saving }) => paybackWords(investment, saving.p50),
    },
    {
      id: "electricity",
      label: "Electricity",
      cell: ({ electricKwh }) => <Range range={electricKwh} unit="kWh" />,
      worked: ({ electricKwh }) => electricKwh,
    },
    {
      id: "heat",
      label: "Bought heat",
      cell: ({ heatKwh }) => <Range range={heatKwh} unit="kWh" />,
      worked: ({ heatKwh }) => heatKwh,
    },
    {
      id: "carbon",
      label: "CO\u2082, average factors",
      cell: ({ emissionsKgCo2 }) => <Range range={emissionsKgCo2} unit="kg" />,
      worked: ({ emissionsKgCo2 }) => emissionsKgCo2,
    },
    {
      id: "comfort",
      label: "Occupied hours outside the comfort range, before \u2192 after",
      cell: ({ outsideComfort: { before, after } }) => `${percent(before)} \u2192 ${percent(after)}`,
    },
    {
      id: "cold",
      label: "Cold reports a year, before \u2192 after (90 % interval)",
      cell: ({ cold }) => reports(cold),
    },
    { id: "hot", label: "Hot reports a year, before \u2192 after (90 % interval)", cell: ({ hot }) => reports(hot) },
    {
      id: "heaters",
      label: "Space heaters expected to go (80 % range)",
      cell: ({ heatersGiven: { expected, of, low, high } }) =>
        `${formatFigure(expected, { decimals: 1 })} of ${of} (${formatFigure(low, { decimals: 1 })}\u2013${formatFigure(high, { decimals: 1 })})`,
    },
    {
      id: "circuits",
      label: "Taken off circuits at high power",
      cell: ({ circuitRelief: { goneW, addedW } }) =>
        `${formatFigure((goneW - addedW) / 1000, { decimals: 1 })}\u2009kW`,
    },
  ];
  return (
    <DataTable
      caption="Variants side by side, a year each"
      rows={lines}
      rowKey={(line) => line.id}
      columns={[
        { key: "what", head: "A year of", names: true, cell: (line) => line.label },
        ...variants.map(({ name, isChosen, picture }, place) => ({
          key: `variant-${place}`,
          head: isChosen ? `${name}, proposed` : name,
          cell: (line: Line) => line.cell(picture),
        })),
      ]}
      detail={({ worked }) =>
        worked
          ? {
              summary: "Working",
              content: (
                <OpenedContent isLive={isLive}>
                  {variants.map(({ name, picture }) => (
                    <section key={name}>
                      <h3>{name}</h3>
                      <WorkingSheet working={worked(picture).working} buildingPath={buildingPath} />
                    </section>
                  ))}
                </OpenedContent>
              ),
            }
          : null
      }
    />
  );
}

function paybackWords(investment: number, saving: number): string {
  if (investment === 0) return "no one-off cost";
  if (saving <= 0) return "none: nothing is saved";
  return `${formatFigure(investment / saving, { significant: 2 })} years`;
}
