import { describe, expect, it } from "vitest";
import { postedValues } from "@/app/_server/form-state";
import { nextPath, signInPath } from "@/app/_server/next-path";

describe("nextPath", () => {
  it("keeps a path of this site with its query", () => {
    expect(nextPath("/buildings/3/zones?sort=cost#top")).toBe("/buildings/3/zones?sort=cost#top");
  });

  it.each([
    "https://elsewhere.example/",
    "//elsewhere.example",
    "/\\elsewhere.example",
    "/\t/elsewhere.example",
    "/.//elsewhere.example",
    "/x/..//elsewhere.example",
    "javascript:alert(1)",
    "buildings",
    "",
    undefined,
    ["/a", "/b"],
    "/sign-in?next=/sign-in",
  ])("sends %j to the list of buildings", (text) => {
    expect(nextPath(text)).toBe("/buildings");
  });

  it("survives being carried by the sign-in address", () => {
    const address = new URL(signInPath("/buildings/3?a=b&c=d"), "http://this.site");
    expect(nextPath(address.searchParams.get("next"))).toBe("/buildings/3?a=b&c=d");
  });
});

describe("postedValues", () => {
  it("keeps texts, joins repeated names and leaves passwords and the framework's fields out", () => {
    const form = new FormData();
    for (const [name, value] of [
      ["email", "a@b.example"],
      ["password", "secret"],
      ["days", "1"],
      ["days", "2"],
      ["$ACTION_ID_1", ""],
    ] as const) {
      form.append(name, value);
    }
    form.append("file", new File(["x"], "x.csv"));
    expect(postedValues(form)).toEqual({ email: "a@b.example", days: "1,2" });
  });
});
