import { describe, expect, it } from "vitest";
import { failureInWords, reportFromForm } from "@/app/report/[token]/form-values";
import { chooseLanguage, LANGUAGES, messagesOf } from "@/app/report/messages/choose-language";
import { ACTIVITIES } from "@/lib/comfort/activity";
import { ENSEMBLES } from "@/lib/comfort/ensembles";

describe("the occupant's languages", () => {
  it.each(LANGUAGES.map((each) => [each.tag, each] as const))("%s has words for every answer", (_, messages) => {
    for (const { id } of ENSEMBLES) expect(messages.ensembles[id], id).toBeTruthy();
    for (const { id } of ACTIVITIES) expect(messages.activities[id], id).toBeTruthy();
    expect(new Set(Object.values(messages.scale)).size).toBe(7);
    expect(messages.scaleSource).toMatch(messages.tag === "en" ? /ISO 7730:2005, table 1/ : /^from memory|table 1/);
  });

  it("takes what was chosen, then the header by its weights, then English", () => {
    expect(chooseLanguage("de", "fr").tag).toBe("de");
    expect(chooseLanguage(undefined, "pl, fr;q=0.5, es-MX;q=0.8, en;q=0.1").tag).toBe("es");
    expect(chooseLanguage(undefined, "de;q=0, fr").tag).toBe("fr");
    expect(chooseLanguage("xx", "pl").tag).toBe("en");
    expect(chooseLanguage(undefined, null).tag).toBe("en");
  });
});

describe("a refusal", () => {
  const FR = messagesOf("fr") ?? LANGUAGES[0];
  it("is said in the language of the form, by field, with what was entered", () => {
    const failure = {
      ok: false as const,
      values: { note: "x" },
      fieldErrors: { preference: "Say", "bodyParts.0": "No" },
      formError: "2",
    };
    expect(FR && failureInWords(failure, FR)).toEqual({
      ok: false,
      values: { note: "x" },
      fieldErrors: { preference: FR?.errors.preference, bodyParts: FR?.errors.other },
      formError: FR?.errors.lookAgain,
    });
  });
});

it("reads several parts of the body from boxes of one name", () => {
  expect(reportFromForm({ thermalSensation: "-2", preference: "warmer", bodyParts: "feet,neck" })).toMatchObject({
    thermalSensation: -2,
    bodyParts: ["feet", "neck"],
    sinceWhen: null,
    replyAddress: null,
  });
});
