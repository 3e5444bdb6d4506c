import { expect, test } from "vitest";
import { answersFromWords } from "@/lib/importers/trend-csv/answers-from-words";

test("answers written as words", () => {
  expect(
    answersFromWords([
      "date-order=dmy",
      "clock=standard-all-year",
      "unit=degF",
      "unit:A=B ZN-T=degC",
      "value-column=Average",
      "flag-column=0, 192",
    ]),
  ).toEqual({
    status: "ok",
    answers: {
      dateOrder: "dmy",
      clock: "standard-time-all-year",
      unit: "degF",
      units: { "A=B ZN-T": "degC" },
      valueColumn: "Average",
      flagColumn: { good: ["0", "192"] },
    },
  });
});

test.each(["date-order=ymd", "clock=summer", "unit=furlong", "colour=red", "date-order", "=x"])(
  "%s is refused with a reason",
  (word) => {
    const verdict = answersFromWords([word]);
    expect(verdict.status).toBe("invalid");
    expect(verdict.status === "invalid" && verdict.message.length).toBeGreaterThan(20);
  },
);
