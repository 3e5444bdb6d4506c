export type NavEntry = { path: string; label: string };

/** Pages of a building in the order of need; `path` follows `/buildings/{id}`. */
export const NAV_ENTRIES: readonly NavEntry[] = [
  { path: "", label: "Overview" },
  { path: "/zones", label: "Zones" },
  { path: "/devices", label: "Devices" },
  { path: "/comfort-reports", label: "Comfort reports" },
  { path: "/energy-meter", label: "Energy meter" },
  { path: "/proposals", label: "Proposals" },
  { path: "/imports", label: "Imports" },
  { path: "/assumptions", label: "Assumptions" },
  { path: "/working", label: "Working" },
  { path: "/settings", label: "Settings" },
];

/** The entry under which a path lies, or undefined; the overview stands for its own path only. */
export function currentEntry(pathname: string, buildingPath: string): NavEntry | undefined {
  return NAV_ENTRIES.find((entry) => {
    const full = buildingPath + entry.path;
    return pathname === full || (entry.path !== "" && pathname.startsWith(`${full}/`));
  });
}
