"use client";

import { useActionState, useDeferredValue, useMemo, useState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { NumberField } from "@/app/_components/ui/number-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import { type BoundAction, postedValues } from "@/app/_server/form-state";
import type { LiveBuilding } from "@/lib/proposals/live-building";
import { chosenPairs, type ZonePair } from "../form";
import type { FormValues, ZoneChoice } from "../view-model";
import { LeverAmounts } from "./lever-amounts";
import { LivePictures } from "./live-pictures";
import { idleIn, picturesOf } from "./pictures";
import { PlanFields, SeasonFields } from "./plan-fields";
import { ZoneAmounts } from "./zone-amounts";
import { ZoneLevers } from "./zone-levers";

type Props = {
  action: BoundAction;
  values: FormValues;
  zones: readonly ZoneChoice[];
  building: LiveBuilding;
  temperatureUnit: "C" | "F";
  buildingPath: string;
  submitLabel: string;
};

/**
 * Zones, levers and plan of a proposal, with what they would bring beside them. The figures follow every move of a slider by
 * the code that freezes them on submission; without script they are those of the last save.
 */
export function ProposalEditor({
  action,
  values: saved,
  zones,
  building,
  temperatureUnit,
  buildingPath,
  submitLabel,
}: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const begin = failure?.values ?? saved;
  const [typed, setTyped] = useState(begin);
  const [pairs, setPairs] = useState(() => chosenPairs(begin));
  const follow = (values: FormValues): void => {
    setTyped(values);
    const isKnown = (one: ZonePair): boolean =>
      pairs.some(({ zoneId, lever }) => zoneId === one.zoneId && lever === one.lever);
    const more = chosenPairs(values).filter((each) => !isKnown(each));
    if (more.length > 0) setPairs([...pairs, ...more]);
  };
  const pictures = useMemo(() => picturesOf(building, typed), [building, typed]);
  const idleNow = JSON.stringify([...idleIn(pictures)]);
  const idle = useMemo(() => new Map(JSON.parse(idleNow) as [string, string][]), [idleNow]);
  const later = useDeferredValue(typed);
  const errors = failure?.fieldErrors ?? {};
  const of = (name: string) => ({ name, defaultValue: begin[name] ?? "", error: errors[name] });
  return (
    <FormStack action={formAction} onInput={(event) => follow(postedValues(new FormData(event.currentTarget)))}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      {state?.ok ? <Notice kind="done" title="Saved" /> : null}
      <FieldSet legend="Proposal">
        <Field {...of("title")} label="Name" />
        <TextAreaField {...of("reason")} label="Why" optional rows={2} />
      </FieldSet>
      <SeasonFields of={of} />
      <FieldSet
        legend="Levers"
        hint="Each variant has its own amounts, for the zones below. A variant without a name is not used."
      >
        <LeverAmounts values={typed} begin={begin} errors={errors} />
      </FieldSet>
      <LivePictures
        pictures={pictures}
        building={building}
        curveValues={later}
        investment={Number(typed.investment) || 0}
        temperatureUnit={temperatureUnit}
        buildingPath={buildingPath}
      />
      <FieldSet legend="Zones" hint="Proposed by the diagnosis; add or take away any.">
        <ZoneLevers zones={zones} begin={begin} idle={idle} />
      </FieldSet>
      <FieldSet
        legend="Amounts of single zones"
        hint="An empty field takes the variant's amount, which stands in it in grey. 0 leaves the zone out of that variant."
      >
        <ZoneAmounts zones={zones} values={typed} begin={begin} errors={errors} idle={idle} pairs={pairs} />
      </FieldSet>
      <PlanFields of={of} values={typed} temperatureUnit={temperatureUnit} />
      <FieldSet legend="One-off cost" inline>
        <NumberField {...of("investment")} label="Work, parts and notices" unit={building.currency} />
      </FieldSet>
      <FormActions>
        <SubmitButton>{submitLabel}</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
