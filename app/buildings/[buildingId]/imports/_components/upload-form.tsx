import { Button } from "@/app/_components/ui/button";
import { Field } from "@/app/_components/ui/field";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";

const KINDS = [
  { value: "trends", label: "Trend logs (CSV, or a zip of them)" },
  { value: "weather", label: "Weather year (EPW or TMY3)" },
  { value: "zones", label: "Zones (CSV)" },
  { value: "desks", label: "Desks (CSV)" },
  { value: "devices", label: "Devices (CSV)" },
];

/** A plain multipart form: files of one kind at a time. */
export function UploadForm({ action }: { action: string }) {
  return (
    <FormStack action={action} method="post" encType="multipart/form-data">
      <SelectField name="kind" label="What the files hold" options={KINDS} />
      <Field
        name="files"
        label="Files"
        type="file"
        multiple
        hint="As many as you like, each up to 200 MB. A file that was brought in before changes nothing."
      />
      <FormActions>
        <Button type="submit" kind="primary">
          Bring in
        </Button>
      </FormActions>
    </FormStack>
  );
}
