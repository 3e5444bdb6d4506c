import type { MouseEvent } from "react";

/** The box that stands for all rows of the page; without script it is read when the form is sent. */
export const ALL_OF_PAGE = "allOfPage";

/** Boxes of the rows, in the order of the rows. */
const boxesOf = (form: HTMLFormElement | null): HTMLInputElement[] => [
  ...(form?.querySelectorAll<HTMLInputElement>('input[type="checkbox"][name^="select."]') ?? []),
];

/** Ticks or clears all rows of the page. */
export function selectAll({ currentTarget }: MouseEvent<HTMLInputElement>): void {
  for (const box of boxesOf(currentTarget.form)) box.checked = currentTarget.checked;
}

/**
 * With shift held: sets all rows between the last one clicked and this one alike. Returns this row's position. The box
 * for all rows follows.
 */
export function selectRange(
  { currentTarget: box, shiftKey }: MouseEvent<HTMLInputElement>,
  last: number | null,
): number {
  const boxes = boxesOf(box.form);
  const at = boxes.indexOf(box);
  if (shiftKey && last !== null && at >= 0)
    for (const between of boxes.slice(Math.min(last, at), Math.max(last, at) + 1)) between.checked = box.checked;
  const all = box.form?.elements.namedItem(ALL_OF_PAGE);
  if (all instanceof HTMLInputElement) all.checked = boxes.every((each) => each.checked);
  return at;
}
