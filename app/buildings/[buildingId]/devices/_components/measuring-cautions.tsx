import { Remark } from "@/app/_components/shell/remark";
import { type CautionTopic, cautionsFor } from "@/lib/electrical/cautions";

/** The usual cautions, each with its source as a title. */
export function MeasuringCautions({ topic = "measuring" }: { topic?: CautionTopic }) {
  return (
    <>
      {cautionsFor(topic).map((caution) => (
        <Remark key={caution.id}>{caution.text}</Remark>
      ))}
    </>
  );
}
