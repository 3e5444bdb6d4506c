import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { currentEntry } from "@/app/_components/shell/nav-entries";
import { DataTable } from "@/app/_components/ui/data-table";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";

describe("a table", () => {
  const html = renderToStaticMarkup(
    <DataTable
      caption="Zones"
      columns={[
        {
          key: "name",
          head: "Zone",
          names: true,
          cell: (row: { name: string; energyKwh: number }) => row.name,
          total: "Building",
        },
        { key: "energy", head: "Energy", unit: "kWh", align: "number", cell: (row) => row.energyKwh, total: 30 },
      ]}
      rows={[
        { name: "East", energyKwh: 0 },
        { name: "West", energyKwh: 30 },
      ]}
      rowKey={(row) => row.name}
    />,
  );

  it("carries label and unit with every value for the narrow view, zero included", () => {
    expect(html.match(/data-label="Energy" data-unit="kWh"/g)).toHaveLength(3);
  });

  it("names its rows and sums in a foot", () => {
    expect(html).toMatch(/<th scope="row"[^>]*>East/);
    expect(html).toMatch(/<tfoot>.*Building.*30.*<\/tfoot>/);
  });
});

describe("a table with details and codes", () => {
  const html = renderToStaticMarkup(
    <DataTable
      caption="Zones"
      columns={[
        { key: "code", head: "Zone", names: true, cell: (row: { code: string }) => <a href="/1">{row.code}</a> },
        { key: "name", head: "Name", cell: () => "North side, west half" },
      ]}
      rows={[{ code: "1-01" }, { code: "1-02-D11" }]}
      rowKey={(row) => row.code}
      detail={(row) => ({ summary: `Working of ${row.code}`, content: "=" })}
    />,
  );

  it("keeps a code on one line, bare or in a link, and lets a name break", () => {
    expect(html).toMatch(/<th scope="row" class="[^"]*code[^"]*"[^>]*><a href="\/1">1-01/);
    expect(html).not.toMatch(/class="[^"]*code[^"]*"[^>]*>North side/);
  });

  it("keeps room for the longest summary that is lifted into a row", () => {
    expect(html).toContain('data-longest="Working of 1-02-D11"');
  });
});

describe("a field", () => {
  it("ties label, hint, unit and error to its control", () => {
    const html = renderToStaticMarkup(
      <Field name="powerW" label="Power" hint="On the plate." unit="W" error="Too low." />,
    );
    expect(html).toContain('for="powerW"');
    expect(html).toContain('aria-describedby="powerW-hint powerW-error powerW-unit"');
    expect(html).toContain('aria-invalid="true"');
  });
});

describe("the summary of a refused form", () => {
  it("leads to each field, and is absent when there is nothing to say", () => {
    expect(renderToStaticMarkup(<FormMessage fieldErrors={{ a: undefined }} />)).toBe("");
    const html = renderToStaticMarkup(<FormMessage fieldErrors={{ powerW: ["Too low."] }} />);
    expect(html).toContain('role="alert"');
    expect(html).toContain('href="#powerW"');
  });
});

describe("the navigation of a building", () => {
  it("marks the page or the one it lies under, and the overview only for itself", () => {
    expect(currentEntry("/buildings/1", "/buildings/1")?.label).toBe("Overview");
    expect(currentEntry("/buildings/1/zones/4", "/buildings/1")?.label).toBe("Zones");
    expect(currentEntry("/buildings/12/zones", "/buildings/1")).toBeUndefined();
  });
});
