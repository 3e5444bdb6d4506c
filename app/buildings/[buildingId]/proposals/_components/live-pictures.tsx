import { useMemo } from "react";
import { costCurve } from "@/lib/proposals/live/cost-curve";
import type { LiveBuilding } from "@/lib/proposals/live-building";
import { leversOf } from "../form";
import type { FormValues } from "../view-model";
import { CurveFigure } from "./curve-figure";
import styles from "./proposal.module.css";
import { TempsFigure } from "./temps-figure";
import { type NamedPicture, VariantFigures } from "./variant-figures";

type Props = {
  pictures: readonly NamedPicture[];
  building: LiveBuilding;
  /** What the curve follows: a step behind the sliders where the browser is busy. */
  curveValues: FormValues;
  investment: number;
  temperatureUnit: "C" | "F";
  buildingPath: string;
};

/** What the variants would bring: figures side by side, temperatures and the cost curve of the proposed one. */
export function LivePictures({ pictures, building, curveValues, investment, temperatureUnit, buildingPath }: Props) {
  const curve = useMemo(
    () => costCurve(building, leversOf(curveValues, Number(curveValues.chosen ?? "0"))),
    [building, curveValues],
  );
  const chosen = pictures.find((each) => each.isChosen) ?? pictures[0];
  if (!chosen) return <p>Give a variant a name to see what it would bring.</p>;
  return (
    <div className={styles.live} data-live-picture={chosen.picture.saving.stated.toFixed(2)}>
      <VariantFigures
        variants={pictures}
        currency={building.currency}
        investment={investment}
        buildingPath={buildingPath}
      />
      <p>
        By {building.tierLabel}. Comfort range: {building.comfort.source}. Demand charges are not counted, and reports
        follow field votes: people dress for the building they have.
      </p>
      <div className={styles.figures}>
        <TempsFigure
          temps={chosen.picture.temps}
          comfort={building.comfort}
          unit={temperatureUnit}
          name={chosen.name}
        />
        {curve ? <CurveFigure curve={curve} currency={building.currency} /> : null}
      </div>
    </div>
  );
}
