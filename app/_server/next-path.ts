const HOME = "/buildings";

/** Where to go after sign-in: a path of this site, never an address that a link could have smuggled in. */
export function nextPath(text: unknown): string {
  if (typeof text !== "string" || !text.startsWith("/")) return HOME;
  const base = "http://this.site";
  if (!URL.canParse(text, base)) return HOME;
  const url = new URL(text, base);
  if (url.origin !== base || url.pathname.startsWith("//") || url.pathname === "/sign-in") return HOME;
  return `${url.pathname}${url.search}${url.hash}`;
}

export function signInPath(next?: string): string {
  return next ? `/sign-in?next=${encodeURIComponent(next)}` : "/sign-in";
}
