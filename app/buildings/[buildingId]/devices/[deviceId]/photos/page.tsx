import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Notice } from "@/app/_components/ui/notice";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readDevicePhotos } from "@/lib/services/photos/keep";
import { formatLocal, formatLocalDate } from "@/lib/time/format";
import { formatNumber } from "@/lib/units/format";
import { PhotoForm } from "./_components/photo-form";
import { removePhotoAction } from "./actions";
import styles from "./photos.module.css";

export const metadata: Metadata = { title: "Photos" };

type Props = {
  params: Promise<{ buildingId: string; deviceId: string }>;
  searchParams: Promise<{ problem?: string; finding?: string }>;
};

/** Photos of a device, of its label and of what an inspection found. */
export default async function PhotosPage({ params, searchParams }: Props) {
  const { buildingId, deviceId } = await params;
  const { problem, finding: chosen } = await searchParams;
  const id = Number(buildingId);
  const path = `/buildings/${id}/devices/${deviceId}`;
  const { building, device, photos, findings } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), ...readDevicePhotos(ctx, id, Number(deviceId)) }),
    `${path}/photos`,
  );
  const nameOf = (itemId: number | null): string | null => {
    const finding = findings.find((each) => each.id === itemId);
    return finding ? `${finding.fault}, inspected ${formatLocalDate(finding.inspectedOn)}` : null;
  };
  return (
    <>
      <PageHeading
        title={`Photos of ${device.label}`}
        lede="Its label, where it stands, and what an inspection found."
      />
      {problem ? (
        <Notice kind="caution" title="Not taken">
          <p>{problem}</p>
        </Notice>
      ) : null}
      <Section id="photos" title="On record" wide action={<Link href={path}>Measurement sheet of {device.label}</Link>}>
        {photos.length === 0 ? <EmptyState>No photo yet.</EmptyState> : null}
        <ul className={styles.photos}>
          {photos.map((photo) => (
            <li key={photo.id}>
              <figure>
                <a href={`${path}/photos/${photo.id}`}>
                  {/* biome-ignore lint/performance/noImgElement: pictures behind a sign-in are not for the image service */}
                  <img
                    src={`${path}/photos/${photo.id}`}
                    alt={photo.caption || nameOf(photo.inspectionItemId) || `Photo of ${device.label}`}
                    width={photo.widthPx}
                    height={photo.heightPx}
                    loading="lazy"
                  />
                </a>
                <figcaption>
                  {photo.caption}
                  {photo.inspectionItemId === null ? null : <span> {nameOf(photo.inspectionItemId)}</span>}
                  <span className={styles.soft}>
                    {photo.enteredBy}, {formatLocal(photo.enteredAtMs, building.timeZone, "date-time")},{" "}
                    {formatNumber(photo.byteCount / 1000, { decimals: 0 })} kB
                  </span>
                  <form action={removePhotoAction}>
                    <input type="hidden" name="buildingId" value={id} />
                    <input type="hidden" name="deviceId" value={deviceId} />
                    <input type="hidden" name="photoId" value={photo.id} />
                    <Button type="submit">Take out</Button>
                  </form>
                </figcaption>
              </figure>
            </li>
          ))}
        </ul>
      </Section>
      <Section
        id="add"
        title="Add a photo"
        remarks={
          <Remark>
            Photograph the device, not people or screens. Place, time and camera are taken out of the picture before it
            is kept.
          </Remark>
        }
      >
        <PhotoForm
          action={`${path}/photos/upload`}
          chosen={chosen ?? ""}
          findings={findings.map((finding) => ({ value: String(finding.id), label: nameOf(finding.id) ?? "" }))}
        />
      </Section>
    </>
  );
}
