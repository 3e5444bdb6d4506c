/** Text as it may stand in markup and in the values of attributes. */
export const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[sign] ?? sign);

/** Text inside a string of a style sheet, such as a running header. */
export const styleString = (text: string): string =>
  `"${text.replace(/[\\"]/g, (sign) => `\\${sign}`).replace(/[\n\r<]/g, " ")}"`;
