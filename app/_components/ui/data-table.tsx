import { Fragment, isValidElement, type ReactNode } from "react";
import styles from "./data-table.module.css";

export type DataColumn<Row> = {
  key: string;
  /** Heading, also the label of the value in the narrow view. */
  head: string;
  /** Unit of the whole column: stands in the heading, and after each value in the narrow view. */
  unit?: string;
  /** `number` aligns to the end; give a column of numbers the same decimals in every row. */
  align?: "text" | "number";
  /** Whole sentences: in the narrow view they begin at the left, under their label. */
  prose?: boolean;
  cell: (row: Row) => ReactNode;
  /** What stands in this column of the totals line. */
  total?: ReactNode;
  /** The column that names the row. */
  names?: boolean;
};

type Props<Row> = {
  caption: string;
  /** Keeps the caption for screen readers when a heading above says the same. */
  captionHidden?: boolean;
  columns: readonly DataColumn<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string | number;
  /** Opens under a row, across the table: the working of the row's figure, its notes. */
  detail?: (row: Row) => { summary: string; content: ReactNode } | null | undefined;
  /** Shown instead of the table when there are no rows. */
  empty?: ReactNode;
};

/** A ruled table with aligned figures and a double-ruled total; a list of records on narrow screens. */
export function DataTable<Row>({ caption, captionHidden = false, columns, rows, rowKey, detail, empty }: Props<Row>) {
  if (rows.length === 0 && empty) return <>{empty}</>;
  const details = rows.map((row) => detail?.(row));
  const hasTotals = columns.some((column) => column.total !== undefined);
  return (
    <div className={styles.frame}>
      <table className={styles.table}>
        <caption className={captionHidden ? "visually-hidden" : styles.caption}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.key} scope="col" className={column.align === "number" ? styles.number : undefined}>
                <span className={styles.head}>
                  {column.head}
                  {column.unit ? <span className={styles.unit}> {column.unit}</span> : null}
                </span>
              </th>
            ))}
            {detail ? (
              <th
                scope="col"
                className={styles.detailHead}
                data-longest={longest(details.map((each) => each?.summary))}
              >
                <span className="visually-hidden">More</span>
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => {
            const more = details[index];
            return (
              <Fragment key={rowKey(row)}>
                <tr className={more ? styles.withDetail : undefined}>
                  {columns.map((column) => cellOf(column, column.cell(row)))}
                  {detail ? <td className={styles.detailGap} /> : null}
                </tr>
                {more ? (
                  <tr className={styles.detailRow}>
                    <td colSpan={columns.length + 1}>
                      <details className={styles.detail}>
                        <summary>{more.summary}</summary>
                        <div className={styles.detailContent}>{more.content}</div>
                      </details>
                    </td>
                  </tr>
                ) : null}
              </Fragment>
            );
          })}
        </tbody>
        {hasTotals ? (
          <tfoot>
            <tr>
              {columns.map((column) => cellOf(column, column.total))}
              {detail ? <td className={styles.detailGap} /> : null}
            </tr>
          </tfoot>
        ) : null}
      </table>
    </div>
  );
}

function cellOf<Row>(column: DataColumn<Row>, content: ReactNode) {
  const blank = content === undefined || content === null || content === "";
  const attributes = {
    className:
      [
        column.align === "number" ? styles.number : "",
        column.prose ? styles.prose : "",
        blank ? styles.blank : "",
        isCode(content) ? styles.code : "",
      ]
        .filter(Boolean)
        .join(" ") || undefined,
    "data-label": column.head,
    "data-unit": column.unit && !blank ? column.unit : undefined,
  };
  if (column.names && !blank) {
    return (
      <th key={column.key} scope="row" {...attributes}>
        {content}
      </th>
    );
  }
  return (
    <td key={column.key} {...attributes}>
      {content}
    </td>
  );
}

/** Keeps room for the links that are lifted into the rows. */
const longest = (texts: readonly (string | undefined)[]): string =>
  texts.reduce<string>((widest, text) => (text && text.length > widest.length ? text : widest), "");

/** A short code such as 1-01, bare or as a link: it is not broken at its hyphen. */
function isCode(content: ReactNode): boolean {
  const text = isValidElement<{ children?: ReactNode }>(content) ? content.props.children : content;
  return typeof text === "string" && /^\S{1,16}$/.test(text);
}
