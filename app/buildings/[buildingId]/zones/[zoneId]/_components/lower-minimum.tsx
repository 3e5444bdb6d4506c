import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import type { Building } from "@/lib/services/buildings/find";
import type { Verdict } from "@/lib/trends/diagnosis/diagnose-zone";
import type { MinimumAirflowPrediction } from "@/lib/trends/minimum-airflow-prediction";
import { lowerMinimumWords } from "../verdict-view-model";

type Props = {
  prediction: MinimumAirflowPrediction | null;
  verdict: Verdict | null;
  building: Building;
  buildingPath: string;
};

/** The argument for a lower minimum airflow: where the zone would settle, with its working. */
export function LowerMinimum({ prediction, verdict, building, buildingPath }: Props) {
  const words = lowerMinimumWords(prediction, verdict, building);
  if (!words) return null;
  if (words.figure === null || prediction?.status !== "ok") return <p>{words.before}</p>;
  return (
    <WorkingDisclosure working={prediction.working} buildingPath={buildingPath}>
      {words.before} <strong>{words.figure}</strong> {words.after}
    </WorkingDisclosure>
  );
}
