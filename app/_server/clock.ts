/** The one reading of the clock on the server: epoch milliseconds for a use-case's context. */
export const now = (): number => Date.now();
