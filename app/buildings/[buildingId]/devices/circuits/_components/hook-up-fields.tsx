import { Field } from "@/app/_components/ui/field";
import { SelectField } from "@/app/_components/ui/select-field";
import { MAPPING_BASES, OUTLET_KINDS } from "@/lib/electrical/circuit/circuit-kinds";
import { mappingLabel, outletLabel } from "../view-model";

type Props = { values: Record<string, string>; errors: Record<string, string> };

/** Outlet of a device and how it is known which breaker feeds it. */
export function HookUpFields({ values, errors }: Props) {
  const field = (name: string) => ({ name, defaultValue: values[name] ?? "", error: errors[name] });
  return (
    <>
      <SelectField
        {...field("circuitMapping")}
        label="Breaker known by"
        options={MAPPING_BASES.map((value) => ({ value, label: mappingLabel(value) }))}
      />
      <SelectField
        {...field("outletKind")}
        label="Plugged into"
        options={OUTLET_KINDS.map((value) => ({ value, label: outletLabel(value) }))}
      />
      <Field
        {...field("outletLabel")}
        label="Outlet"
        optional
        hint="Devices that name the same outlet share it."
        autoComplete="off"
      />
    </>
  );
}
