import { Button } from "@/app/_components/ui/button";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import type { Sensitivity } from "@/lib/overcooling/live-effect";
import { formatLocal } from "@/lib/time/format";
import { overrideAction, withdrawAction } from "../actions";
import { figure, rangeFigure } from "../view-model";
import { OverrideForm } from "./override-form";

type Props = {
  buildingId: number;
  assumption: ResolvedAssumption;
  timeZone: string;
  sensitivity: Sensitivity | null;
  sign: string;
};

/** What an assumption is used for, its default, who changed it, and the form to change it. */
export function AssumptionDetail({ buildingId, assumption, timeZone, sensitivity, sign }: Props) {
  const { id, appliesTo, source, override, byDefault, unit } = assumption;
  return (
    <>
      <DefinitionList
        items={[
          { term: "Used for", value: appliesTo },
          { term: "Default's source", value: source.url ? <a href={source.url}>{source.title}</a> : source.title },
          ...(byDefault
            ? [{ term: "Default", value: `${figure(byDefault.value)} ${unit}, range ${rangeFigure(byDefault)}` }]
            : []),
          ...(override
            ? [
                {
                  term: "Changed",
                  value: `${formatLocal(override.enteredAtMs, timeZone, "date-time")} by ${override.enteredBy}: ${override.reason}`,
                },
              ]
            : []),
        ]}
      />
      <OverrideForm
        action={overrideAction.bind(null, buildingId, id)}
        assumptionId={id}
        unit={unit}
        value={assumption}
        sensitivity={sensitivity}
        sign={sign}
      />
      {override ? (
        <form action={withdrawAction}>
          <input type="hidden" name="buildingId" value={buildingId} />
          <input type="hidden" name="assumptionId" value={id} />
          <Button type="submit">Go back to the default</Button>
        </form>
      ) : null}
    </>
  );
}
