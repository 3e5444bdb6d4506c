import type { Page } from "@playwright/test";

/** What a building is set up with by default in these tests: an office in Chicago, in its own units. */
export const CHICAGO_OFFICE: Readonly<Record<string, string>> = {
  Name: "Lakeside office",
  "Time zone": "America/Chicago",
  "Temperatures shown in": "°F",
  "Areas shown in": "ft²",
  "Conditioned floor area": "15000",
  "System that serves most zones": "VAV with reheat, minimum airflow about 30 % or more",
  "Target zone air temperature, cooling season": "73.4",
  Monday: "07:00-17:00",
  Tuesday: "07:00-17:00",
  Wednesday: "07:00-17:00",
  Thursday: "07:00-17:00",
  Friday: "07:00-17:00",
  Holidays: "2022-05-30",
  Currency: "USD",
  "Electricity price given is": "marginal: the energy charge alone",
  "Electricity price": "0.13",
};

/** Fills fields by their labels, whatever their sort. */
export async function fillFields(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(values)) {
    const field = page.getByLabel(new RegExp(`^${escaped(label)}( \\(optional\\))?$`));
    if ((await field.evaluate((element) => element.tagName)) === "SELECT") await field.selectOption({ label: value });
    else await field.fill(value);
  }
}

/** Values that stand in fields, by label; a choice by its words. */
export async function shownFields(page: Page, labels: readonly string[]): Promise<Record<string, string>> {
  const shown: Record<string, string> = {};
  for (const label of labels) {
    const field = page.getByLabel(new RegExp(`^${escaped(label)}( \\(optional\\))?$`));
    shown[label] = await field.evaluate((element) =>
      element instanceof HTMLSelectElement
        ? (element.selectedOptions[0]?.textContent ?? "")
        : (element as HTMLInputElement).value,
    );
  }
  return shown;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
