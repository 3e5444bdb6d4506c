import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { today } from "@/app/_server/clock";
import { readAs } from "@/app/_server/read";
import { DEVICE_CLASSES, deviceClassById } from "@/lib/electrical/device-classes";
import { readBuilding } from "@/lib/services/buildings/find";
import { devicePrice } from "@/lib/services/devices/read";
import { readPlaces } from "@/lib/services/zones/places";
import { DeviceForm } from "../_components/device-form";
import { MeasuringCautions } from "../_components/measuring-cautions";
import { registerDeviceAction } from "../actions";
import { formFromClass } from "../form";

export const metadata: Metadata = { title: "Register a device" };

type Props = { params: Promise<{ buildingId: string }>; searchParams: Promise<Record<string, string | undefined>> };

export default async function NewDevicePage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const query = await searchParams;
  const path = `/buildings/${id}/devices/new`;
  const { building, places } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), places: readPlaces(ctx, id) }),
    path,
  );
  const deviceClass = query.sort ? deviceClassById(query.sort) : null;
  const start = { foundOn: today(building.timeZone), voltageV: building.mainsVoltageV };
  return (
    <>
      <PageHeading
        title="Register a device"
        lede="Choose what sort it is; its settings follow. What was not measured takes the usual value of its sort, and says so."
      />
      <Section id="choose" title="What it is" remarks={deviceClass ? null : <MeasuringCautions />}>
        <FormStack action={path} method="get">
          <SelectField
            name="sort"
            label="Sort of device"
            defaultValue={deviceClass?.id ?? ""}
            prompt="Choose a sort"
            options={DEVICE_CLASSES.map((each) => ({
              value: each.id,
              label: `${each.kind === "personal-fan" ? "Fan" : "Heater"}: ${each.label}`,
            }))}
          />
          <FormActions>
            <Button type="submit" kind={deviceClass ? "plain" : "primary"}>
              Show its settings
            </Button>
          </FormActions>
        </FormStack>
      </Section>
      {deviceClass ? (
        <Section id="sheet" title={deviceClass.label} wide remarks={<MeasuringCautions />}>
          <DeviceForm
            key={deviceClass.id}
            action={registerDeviceAction.bind(null, id)}
            values={{ ...formFromClass(deviceClass, start), zoneCode: query.zone ?? "", deskCode: query.desk ?? "" }}
            places={places}
            price={devicePrice(building)}
            circuit={null}
            buildingPath={`/buildings/${id}`}
            submitLabel="Register the device"
          />
        </Section>
      ) : null}
    </>
  );
}
