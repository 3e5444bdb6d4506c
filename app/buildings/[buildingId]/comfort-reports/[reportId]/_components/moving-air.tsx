import { Button } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { Field } from "@/app/_components/ui/field";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import type { FanLine } from "../view-model";

/** `fan` is empty for whoever was cold. */
type Props = { fan: readonly FanLine[]; fanPower: string; airSpeed: string; draught: string };

/** What moving air does to a person here: a fan's, and a draught's where its speed was measured. The form asks, and keeps nothing. */
export function MovingAir({ fan, fanPower, airSpeed, draught }: Props) {
  return (
    <>
      {fan.length > 0 ? (
        <>
          <DataTable
            caption="What a desk fan would be worth"
            rows={fan}
            rowKey={(row) => row.speed}
            columns={[
              {
                key: "speed",
                head: "Air at the person",
                unit: "m/s",
                names: true,
                align: "number",
                cell: (row) => row.speed,
              },
              { key: "effect", head: "Feels cooler by", align: "number", cell: (row) => row.effect },
            ]}
          />
          <p>{fanPower}</p>
        </>
      ) : null}
      <FormStack action="#air">
        <Field
          name="airSpeed"
          label="Air speed measured at the neck"
          optional
          unit="m/s"
          inputMode="decimal"
          defaultValue={airSpeed}
          hint="To see how many would feel a draught. It is not kept: write it into the next step."
        />
        <FormActions>
          <Button type="submit">Show the draught rate</Button>
        </FormActions>
      </FormStack>
      {draught ? <p role="status">{draught}</p> : null}
    </>
  );
}
