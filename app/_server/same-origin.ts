/** Whether a request comes from a page of another site; a browser says so, and programs other than browsers say nothing. */
export function isFromElsewhere(request: Request): boolean {
  const origin = request.headers.get("origin");
  if (origin === null) return false;
  return !URL.canParse(origin) || new URL(origin).host !== request.headers.get("host");
}
