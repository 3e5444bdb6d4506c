/** A sheet of labels, measures in mm: common sizes of office labels (common practice, no source; check against the packet). */
export type LabelSheet = {
  id: string;
  label: string;
  pageWidthMm: number;
  pageHeightMm: number;
  columns: number;
  rows: number;
  labelWidthMm: number;
  labelHeightMm: number;
  marginLeftMm: number;
  marginTopMm: number;
  gapAcrossMm: number;
  gapDownMm: number;
};

const A4 = { pageWidthMm: 210, pageHeightMm: 297 };
const LETTER = { pageWidthMm: 215.9, pageHeightMm: 279.4 };

export const LABEL_SHEETS: readonly LabelSheet[] = [
  {
    id: "a4-21",
    label: "A4, 21 labels of 63.5 × 38.1 mm",
    ...A4,
    columns: 3,
    rows: 7,
    labelWidthMm: 63.5,
    labelHeightMm: 38.1,
    marginLeftMm: 7.25,
    marginTopMm: 15.15,
    gapAcrossMm: 2.5,
    gapDownMm: 0,
  },
  {
    id: "a4-24",
    label: "A4, 24 labels of 70 × 37 mm",
    ...A4,
    columns: 3,
    rows: 8,
    labelWidthMm: 70,
    labelHeightMm: 37,
    marginLeftMm: 0,
    marginTopMm: 0.5,
    gapAcrossMm: 0,
    gapDownMm: 0,
  },
  {
    id: "a4-65",
    label: "A4, 65 labels of 38.1 × 21.2 mm",
    ...A4,
    columns: 5,
    rows: 13,
    labelWidthMm: 38.1,
    labelHeightMm: 21.2,
    marginLeftMm: 4.75,
    marginTopMm: 10.7,
    gapAcrossMm: 2.5,
    gapDownMm: 0,
  },
  {
    id: "letter-30",
    label: "Letter, 30 labels of 66.7 × 25.4 mm (2 5/8 × 1 in)",
    ...LETTER,
    columns: 3,
    rows: 10,
    labelWidthMm: 66.675,
    labelHeightMm: 25.4,
    marginLeftMm: 4.7625,
    marginTopMm: 12.7,
    gapAcrossMm: 3.175,
    gapDownMm: 0,
  },
  {
    id: "letter-10",
    label: "Letter, 10 labels of 101.6 × 50.8 mm (4 × 2 in)",
    ...LETTER,
    columns: 2,
    rows: 5,
    labelWidthMm: 101.6,
    labelHeightMm: 50.8,
    marginLeftMm: 3.96875,
    marginTopMm: 12.7,
    gapAcrossMm: 4.7625,
    gapDownMm: 0,
  },
  {
    id: "roll-62x29",
    label: "Label printer, single labels of 62 × 29 mm",
    pageWidthMm: 62,
    pageHeightMm: 29,
    columns: 1,
    rows: 1,
    labelWidthMm: 62,
    labelHeightMm: 29,
    marginLeftMm: 0,
    marginTopMm: 0,
    gapAcrossMm: 0,
    gapDownMm: 0,
  },
];

export const labelSheetById = (id: string): LabelSheet | null => LABEL_SHEETS.find((sheet) => sheet.id === id) ?? null;

export const labelsASheet = ({ columns, rows }: LabelSheet): number => columns * rows;

/** Upper left corner of the label at a place of its sheet, counted from 0 along the rows [mm]. */
export function labelCorner(sheet: LabelSheet, place: number): { xMm: number; yMm: number } {
  const [column, row] = [place % sheet.columns, Math.floor(place / sheet.columns)];
  return {
    xMm: sheet.marginLeftMm + column * (sheet.labelWidthMm + sheet.gapAcrossMm),
    yMm: sheet.marginTopMm + row * (sheet.labelHeightMm + sheet.gapDownMm),
  };
}
