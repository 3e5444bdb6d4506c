"use client";

import { useRef } from "react";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Tag } from "@/app/_components/ui/tag";
import { rowText } from "../form";
import { unitWord, WHAT_CHOICES } from "../kind-words";
import type { MappingRow } from "../view-model";
import styles from "./mapping-form.module.css";
import { selectRange } from "./select-rows";
import { SparkLine } from "./spark-line";

type Props = {
  rows: readonly MappingRow[];
  zones: readonly { id: number; label: string }[];
  errors: Readonly<Record<string, string>> | undefined;
};

/** Longest name that is kept on one line [characters]. */
const SHORT_NAME = 28;

/** The points of one page. Fields begin anew when what is kept of them changes. */
export function PointTable({ rows, zones, errors }: Props) {
  const last = useRef<number | null>(null);
  return (
    <div className={styles.points} id="points">
      <input type="hidden" name="pointCount" value={rows.length} />
      <DataTable
        caption="Points"
        rows={rows}
        rowKey={(row) => row.name}
        empty={<EmptyState>No point is left that is shown so. Show all points to see the others.</EmptyState>}
        columns={[
          {
            key: "select",
            head: "Select",
            cell: (row) => (
              <input
                type="checkbox"
                className={styles.box}
                name={`select.${row.index}`}
                aria-label={`Select ${row.name}`}
                onClick={(event) => {
                  last.current = selectRange(event, last.current);
                }}
              />
            ),
          },
          { key: "name", head: "Point", names: true, cell: (row) => <PointName row={row} /> },
          { key: "what", head: "Is", cell: (row) => <WhatField row={row} error={errors?.[`what.${row.index}`]} /> },
          { key: "zone", head: "Zone", cell: (row) => <ZoneField row={row} zones={zones} /> },
          { key: "unit", head: "Unit", cell: (row) => <UnitField row={row} /> },
          { key: "holds", head: "Holds", cell: (row) => <Holds row={row} /> },
          {
            key: "why",
            head: "Why",
            cell: (row) => (
              <span className={styles.why}>
                <Tag kind={row.open ? "strong" : "plain"}>{row.confidence}</Tag> {row.why}
              </span>
            ),
          },
        ]}
      />
    </div>
  );
}

function PointName({
  row: { name, index, files, what, zoneId, unit, unitChoices, continues, isContinued },
}: {
  row: MappingRow;
}) {
  const asShown = rowText(what, zoneId, unitChoices.length > 0 ? unit : "", isContinued ? (continues ?? "") : "");
  return (
    <>
      <span className={name.length <= SHORT_NAME ? styles.shortName : undefined}>{name}</span>
      {files ? <span className={styles.small}>{files}</span> : null}
      <input type="hidden" name={`name.${index}`} value={name} />
      <input type="hidden" name={`was.${index}`} value={asShown} />
    </>
  );
}

function WhatField({ row: { index, name, what }, error }: { row: MappingRow; error: string | undefined }) {
  const field = `what.${index}`;
  return (
    <>
      <select
        key={`${name}=${what}`}
        id={field}
        name={field}
        className={styles.select}
        defaultValue={what}
        aria-label={`What ${name} is`}
        aria-invalid={error ? true : undefined}
        aria-describedby={error ? `${field}-error` : undefined}
      >
        <option value="">choose</option>
        {WHAT_CHOICES.map((each) => (
          <option key={each.value} value={each.value}>
            {each.label}
          </option>
        ))}
      </select>
      {error ? (
        <p id={`${field}-error`} className={styles.error}>
          {error}
        </p>
      ) : null}
    </>
  );
}

function ZoneField({ row, zones }: { row: MappingRow; zones: Props["zones"] }) {
  const { index, name, zoneId, continues, isContinued } = row;
  return (
    <>
      <select
        key={`${name}=${zoneId}`}
        id={`zone.${index}`}
        name={`zone.${index}`}
        className={styles.select}
        defaultValue={zoneId}
        aria-label={`Zone of ${name}`}
      >
        <option value="">no zone: the whole building</option>
        {zones.map((zone) => (
          <option key={zone.id} value={zone.id}>
            {zone.label}
          </option>
        ))}
      </select>
      {continues ? (
        <label className={styles.small}>
          <input
            key={`${name}=${isContinued}`}
            type="checkbox"
            name={`continues.${index}`}
            value={continues}
            defaultChecked={isContinued}
          />{" "}
          is {continues} under a new name
        </label>
      ) : null}
    </>
  );
}

function UnitField({ row: { index, name, unit, unitChoices, unitWhy } }: { row: MappingRow }) {
  if (unitChoices.length === 0) return unit === "" ? <span className={styles.soft}>none</span> : unit;
  return (
    <>
      <select
        key={`${name}=${unit}`}
        id={`unit.${index}`}
        name={`unit.${index}`}
        className={styles.select}
        defaultValue={unit}
        aria-label={`Unit of ${name}`}
      >
        <option value="">choose</option>
        {unitChoices.map((choice) => (
          <option key={choice} value={choice}>
            {unitWord(choice)}
          </option>
        ))}
      </select>
      <span className={styles.small}>{unitWhy}</span>
    </>
  );
}

function Holds({ row: { holds, span, spark } }: { row: MappingRow }) {
  return (
    <>
      <span>
        {holds} <SparkLine values={spark} />
      </span>
      {span.map((each) => (
        <span key={each} className={styles.small}>
          {each}
        </span>
      ))}
    </>
  );
}
