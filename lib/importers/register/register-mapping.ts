/** What a column of somebody's own register can be. */
export const REGISTER_FIELDS = [
  "label",
  "description",
  "kind",
  "deviceClass",
  "zoneCode",
  "deskCode",
  "make",
  "model",
  "nameplateW",
  "nameplateA",
  "measuredW",
  "hoursPerYear",
  "foundOn",
  "note",
] as const;
export type RegisterField = (typeof REGISTER_FIELDS)[number];

/** How a spreadsheet register is read: columns by field, and what stands where the file says nothing. */
export type RegisterMapping = {
  sheet: string | null;
  /** Column by field, counted from 0. */
  columns: Partial<Record<RegisterField, number>>;
  /** Zone of the rows that name none; empty when such rows are to be rejected. */
  defaultZoneCode: string;
  /** Put before the file's own number where the label would be a bare one. */
  labelPrefix: string;
  /** Device class by the text that stands in the file for it, normalised; a kind of device is never guessed from its watts alone. */
  classes: Record<string, string>;
};
