"use client";

import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField } from "@/app/_components/ui/select-field";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import { WEEKDAYS } from "../form";
import { FUEL_LABEL, SYSTEM_LABEL } from "../system-label";

type Props = { values: Record<string, string>; errors: Record<string, string>; timeZones: readonly string[] };

const optionsOf = (labels: Record<string, string>) =>
  Object.entries(labels).map(([value, label]) => ({ value, label }));

/** Everything that describes a building; figures in the units chosen in the form. */
export function BuildingFields({ values, errors, timeZones }: Props) {
  const of = (name: string) => ({ name, defaultValue: values[name] ?? "", error: errorOf(errors, name) });
  return (
    <>
      <FieldSet legend="The building">
        <Field {...of("name")} label="Name" maxLength={120} />
        <Field
          {...of("timeZone")}
          label="Time zone"
          list="time-zones"
          spellCheck={false}
          hint="IANA name, for example America/New_York. Trend logs are read by this clock."
        />
        <datalist id="time-zones">
          {timeZones.map((zone) => (
            <option key={zone} value={zone} />
          ))}
        </datalist>
        <SelectField
          {...of("temperatureUnit")}
          label="Temperatures shown in"
          options={[
            { value: "C", label: "°C" },
            { value: "F", label: "°F" },
          ]}
        />
        <SelectField
          {...of("areaUnit")}
          label="Areas shown in"
          options={[
            { value: "m2", label: "m²" },
            { value: "ft2", label: "ft²" },
          ]}
        />
        <NumberField {...of("floorAreaM2")} label="Conditioned floor area" unit="m² or ft², as chosen above" />
        <NumberField {...of("mainsVoltageV")} label="Mains voltage" unit="V" />
      </FieldSet>
      <FieldSet legend="The system">
        <SelectField {...of("systemType")} label="System that serves most zones" options={optionsOf(SYSTEM_LABEL)} />
        <CheckboxField
          name="hasEconomizer"
          label="Outdoor air can cool the building (economizer)"
          defaultChecked={values.hasEconomizer !== undefined}
        />
        <SelectField {...of("heatingFuel")} label="Heating coils are fed by" options={optionsOf(FUEL_LABEL)} />
        <NumberField
          {...of("presentCoolingSetpointC")}
          label="Present cooling setpoint"
          optional
          unit="°C or °F, as chosen above"
          hint="What most zones are set to now. Used until trend logs say it zone by zone."
        />
        <NumberField
          {...of("targetZoneAirTempC")}
          label="Target zone air temperature, cooling season"
          unit="°C or °F, as chosen above"
          hint="Overcooling is counted below it. 23.0 °C (73.4 °F) by default: in field votes of air-conditioned offices the wishes for warmer and for cooler are equal near 22.3 °C."
        />
      </FieldSet>
      <FieldSet
        legend="Occupied hours"
        inline
        hint="By the building's clock, such as 08:00-18:00; two intervals with a comma between. Leave a day empty when nobody works."
      >
        {WEEKDAYS.map((day, index) => (
          <Field key={day} {...of(`occupiedHours.weekdays.${index + 1}`)} label={day} placeholder="not occupied" />
        ))}
        <TextAreaField {...of("holidays")} label="Holidays" optional rows={4} hint="One date a line, as YYYY-MM-DD." />
      </FieldSet>
      <FieldSet
        legend="Prices"
        hint="In the currency's main unit, such as dollars. Changes are valued at the marginal price: what one kWh more or less costs."
      >
        <Field
          {...of("currency")}
          label="Currency"
          maxLength={3}
          spellCheck={false}
          hint="Three letters, such as USD, EUR or GBP."
        />
        <SelectField
          {...of("electricityPriceKind")}
          label="Electricity price given is"
          options={[
            { value: "marginal", label: "marginal: the energy charge alone" },
            { value: "blended", label: "blended: the whole bill divided by its kWh" },
          ]}
        />
        <NumberField {...of("electricityPricePerKwh")} label="Electricity price" unit="per kWh" />
        <NumberField
          {...of("demandPricePerKw")}
          label="Demand charge"
          optional
          unit="per kW and month"
          hint="Only with a marginal price: a blended one already contains it."
        />
        <NumberField
          {...of("demandMonths")}
          label="Months in which cooling sets the billed peak"
          optional
          unit="months a year"
        />
        <NumberField {...of("heatPricePerKwh")} label="Price of heat fuel" optional unit="per unit chosen below" />
        <SelectField
          {...of("heatPriceUnit")}
          label="Unit of the heat price"
          options={[
            { value: "kwh", label: "kWh" },
            { value: "therm", label: "therm" },
          ]}
        />
      </FieldSet>
      <FieldSet
        legend="What a complaint costs"
        inline
        hint="Left empty, complaints carry no money: no published figure could be confirmed, so the tool has none of its own."
      >
        <NumberField {...of("complaintHours")} label="Staff time for one complaint" optional unit="h" />
        <NumberField {...of("labourPricePerHour")} label="Labour rate" optional unit="per hour" />
      </FieldSet>
    </>
  );
}

/** The message of a field, or of anything inside it (an interval of a weekday). */
function errorOf(errors: Record<string, string>, name: string): string | undefined {
  return errors[name] ?? Object.entries(errors).find(([path]) => path.startsWith(`${name}.`))?.[1];
}
