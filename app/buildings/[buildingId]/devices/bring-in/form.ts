import { numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import { REGISTER_FIELDS } from "@/lib/importers/register/register-mapping";
import type { RegisterMappingInput, RegisterView } from "@/lib/services/registers/mapping";

/** The mapping as its form shows it. Texts of the file stand in fields of their own, numbered. */
export function formFromMapping({ mapping, classes }: RegisterView): PostedValues {
  const values: PostedValues = {
    sheet: mapping.sheet ?? "",
    defaultZoneCode: mapping.defaultZoneCode,
    labelPrefix: mapping.labelPrefix,
    classCount: String(classes.length),
  };
  for (const field of REGISTER_FIELDS) values[`column.${field}`] = String(mapping.columns[field] ?? "");
  classes.forEach(({ text, chosen }, at) => {
    values[`text.${at}`] = text;
    values[`class.${at}`] = chosen;
  });
  return values;
}

export function mappingFromForm(values: PostedValues): RegisterMappingInput {
  const columns: RegisterMappingInput["columns"] = {};
  for (const field of REGISTER_FIELDS) {
    const at = numberOf(values, `column.${field}`);
    if (at !== null) columns[field] = at;
  }
  const count = Math.min(1000, numberOf(values, "classCount") ?? 0);
  const classes: Record<string, string> = {};
  for (let at = 0; at < count; at++) classes[textOf(values, `text.${at}`)] = textOf(values, `class.${at}`);
  return {
    sheet: textOf(values, "sheet"),
    columns,
    defaultZoneCode: textOf(values, "defaultZoneCode"),
    labelPrefix: textOf(values, "labelPrefix"),
    classes,
  };
}
