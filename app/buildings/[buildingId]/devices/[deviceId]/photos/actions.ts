"use server";

import { revalidatePath } from "next/cache";
import { numberOf } from "@/app/_server/form-fields";
import { postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { removeDevicePhoto } from "@/lib/services/photos/keep";

/** Takes a photo out; the form names it in hidden fields. */
export async function removePhotoAction(form: FormData): Promise<void> {
  const values = postedValues(form);
  const id = (name: string): number => numberOf(values, name) ?? 0;
  await runAction(form, (ctx) => removeDevicePhoto(ctx, id("buildingId"), id("deviceId"), id("photoId")));
  revalidatePath(`/buildings/${id("buildingId")}/devices/${id("deviceId")}/photos`);
}
