import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { readAs } from "@/app/_server/read";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { readBuilding } from "@/lib/services/buildings/find";
import { devicePrice, readDevice } from "@/lib/services/devices/read";
import { readPlaces } from "@/lib/services/zones/places";
import { formatLocalDate } from "@/lib/time/format";
import { DeviceForm } from "../_components/device-form";
import { MeasuringCautions } from "../_components/measuring-cautions";
import { retireDeviceAction, reviseDeviceAction } from "../actions";
import { formFromDevice } from "../form";

export const metadata: Metadata = { title: "Device" };

type Props = { params: Promise<{ buildingId: string; deviceId: string }> };

export default async function DevicePage({ params }: Props) {
  const { buildingId, deviceId } = await params;
  const id = Number(buildingId);
  const { building, places, device } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, id),
      places: readPlaces(ctx, id),
      device: readDevice(ctx, id, Number(deviceId)),
    }),
    `/buildings/${buildingId}/devices/${deviceId}`,
  );
  const place = device.deskCode ? `desk ${device.deskCode}, zone ${device.zoneCode}` : `zone ${device.zoneCode}`;
  const retired = device.retiredOn;
  return (
    <>
      <PageHeading
        title={`Device ${device.label}`}
        lede={`${deviceClassById(device.deviceClass)?.label ?? device.deviceClass} at ${place}, found on ${formatLocalDate(device.foundOn)}${retired ? `, retired on ${formatLocalDate(retired)}: no longer counted` : ""}.`}
      />
      <Section
        id="sheet"
        title="Settings"
        wide
        remarks={<MeasuringCautions topic={device.kind === "space-heater" ? "heater-in-use" : "measuring"} />}
        action={
          <form action={retireDeviceAction}>
            <input type="hidden" name="buildingId" value={id} />
            <input type="hidden" name="deviceId" value={device.id} />
            <input type="hidden" name="change" value={retired === null ? "retire" : "put-back"} />
            <Button type="submit">{retired ? "Put back in use" : "Retire the device"}</Button>
          </form>
        }
      >
        <DeviceForm
          key={device.updatedAtMs}
          action={reviseDeviceAction.bind(null, id, device.id)}
          values={formFromDevice(device)}
          places={places}
          price={devicePrice(building)}
          circuit={null}
          buildingPath={`/buildings/${id}`}
          submitLabel="Save the sheet"
        />
      </Section>
    </>
  );
}
