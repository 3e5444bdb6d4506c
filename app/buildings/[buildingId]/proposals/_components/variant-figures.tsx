import type { ReactNode } from "react";
import { formatFigure } from "@/app/_components/quantity/format-figure";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { Range } from "@/app/_components/quantity/range";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import { type CircuitRelief, isAboveLimit } from "@/lib/proposals/live-circuit";
import type { ExpectedReports, LivePicture } from "@/lib/proposals/live-picture";
import { OpenedContent } from "./opened-content";
import { WORKED_FIGURES } from "./worked-figures";

export type NamedPicture = { name: string; isChosen: boolean; picture: LivePicture };

type Props = {
  variants: readonly NamedPicture[];
  currency: string;
  investment: number;
  buildingPath: string;
  /** Of issued variants: address of the page of a figure's working, by the variant's place and the figure's name. */
  workingPage?: (place: number, figure: string) => string;
};

type Line = {
  id: string;
  label: string;
  cell: (picture: LivePicture) => ReactNode;
};

const percent = (share: number): string => `${formatFigure(100 * share, { decimals: 1 })}\u202f%`;
const reports = (expected: ExpectedReports | null): string => {
  if (!expected) return "no desks with zone air on record";
  const { before, after, low, high } = expected;
  return `${reportCount(before)} \u2192 ${reportCount(after)} (${formatFigure(low, { decimals: 0 })}\u2013${formatFigure(high, { decimals: 0 })})`;
};
/** As the page of both sides has them. */
const reportCount = (value: number): string => formatFigure(value, { decimals: value < 10 ? 1 : 0 });

/** Variants side by side: what a year of each brings, with ranges, and workings to open. */
export function VariantFigures({ variants, currency, investment, buildingPath, workingPage }: Props) {
  const sign = currencySign(currency);
  const lines: Line[] = [
    {
      id: "saving",
      label: "Saving in the first year",
      cell: ({ saving }) => <Range range={saving} unit="" prefix={sign} />,
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
    },
    {
      id: "day",
      label: "Electricity of an occupied day of the season, while it stands",
      cell: ({ electricPerDayKwh }) =>
        electricPerDayKwh ? <Range range={electricPerDayKwh} unit="kWh" /> : "not in this issue",
    },
    {
      id: "heat",
      label: "Bought heat",
      cell: ({ heatKwh }) => <Range range={heatKwh} unit="kWh" />,
    },
    {
      id: "carbon",
      label: "CO\u2082, average factors",
      cell: ({ emissionsKgCo2 }) => <Range range={emissionsKgCo2} unit="kg" />,
    },
    {
      id: "comfort",
      label: "Occupied hours outside the comfort range, before \u2192 after",
      cell: ({ outsideComfort: { before, after } }) => `${percent(before)} \u2192 ${percent(after)}`,
    },
    {
      id: "cold",
      label: "Reports of too cold in the cooling season, before \u2192 after (90 % of years)",
      cell: ({ cold }) => reports(cold),
    },
    {
      id: "hot",
      label: "Reports of too warm in the cooling season, before \u2192 after (90 % of years)",
      cell: ({ hot }) => reports(hot),
    },
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
    {
      id: "relieved",
      label: "Circuits above their planning limit that come below it",
      cell: ({ circuits }) => (circuits ? belowWords(circuits) : "not in this issue"),
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
      detail={({ id }) => {
        const worked = WORKED_FIGURES[id];
        if (!worked) return null;
        const sheets = variants.flatMap(({ name, picture }, place) => {
          const working = worked(picture)?.working;
          if (!working) return [];
          return [
            <section key={name}>
              <h3>{name}</h3>
              <WorkingSheet
                working={working}
                buildingPath={buildingPath}
                further={workingPage && { page: workingPage(place, id), at: [], levels: 0 }}
                wrap={workingPage ? undefined : drawnWhileOpen}
              />
            </section>,
          ];
        });
        return sheets.length === 0
          ? null
          : { summary: "Working", content: workingPage ? sheets : <LiveWorkings>{sheets}</LiveWorkings> };
      }}
    />
  );
}

function belowWords(circuits: readonly CircuitRelief[]): string {
  const above = circuits.filter(({ limitA, todayA }) => isAboveLimit(todayA, limitA));
  if (above.length === 0) return "none is above it as far as is known";
  return `${above.filter(({ outcome }) => outcome === "below-as-expected").length} of ${above.length}`;
}

const drawnWhileOpen = (content: ReactNode): ReactNode => <OpenedContent>{content}</OpenedContent>;

/** Workings of figures that move; without script they are there once the proposal is submitted. */
function LiveWorkings({ children }: { children: ReactNode }) {
  return (
    <>
      <OpenedContent>{children}</OpenedContent>
      <noscript>Workings open with script. Those of a submitted proposal stand on its page without.</noscript>
    </>
  );
}

function paybackWords(investment: number, saving: number): string {
  if (investment === 0) return "no one-off cost";
  if (saving <= 0) return "none: nothing is saved";
  return `${formatFigure(investment / saving, { significant: 2 })} years`;
}
