import Link from "next/link";
import { useMemo } from "react";
import { costCurve } from "@/lib/proposals/live/cost-curve";
import { LEFT_OUT_OF_A_PROMISE } from "@/lib/proposals/live/left-out";
import type { LiveBuilding } from "@/lib/proposals/live-building";
import { leversOf, windowOf } from "../form";
import type { FormValues } from "../view-model";
import { CircuitsRelieved } from "./circuits-relieved";
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
    () => costCurve(building, leversOf(curveValues, Number(curveValues.chosen ?? "0")), windowOf(curveValues)),
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
      <p className={styles.soft}>
        By {building.tierLabel}, of what lies in the season and hours above. Comfort range: {building.comfort.source}.
        Demand charges are not counted. Reports are of the cooling season, fitted to the building's own as on{" "}
        <Link href={`${buildingPath}/comfort-reports/both-sides`}>both sides of a temperature</Link>.{" "}
        {LEFT_OUT_OF_A_PROMISE}
      </p>
      <CircuitsRelieved circuits={chosen.picture.circuits ?? []} name={chosen.name} buildingPath={buildingPath} />
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
