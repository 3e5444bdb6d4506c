import { describe, expect, it } from "vitest";
import { PICTURED_CLASSES } from "@/app/buildings/[buildingId]/walk/_components/class-picture";
import { readingOf } from "@/app/buildings/[buildingId]/walk/_components/sheet-values";
import {
  classesInOrder,
  floorLines,
  labelAfter,
  lastLabel,
  nextDesk,
  progressWords,
  readingOrder,
} from "@/app/buildings/[buildingId]/walk/view-model";
import { DEVICE_CLASSES, deviceClassById } from "@/lib/electrical/device-classes";
import type { WalkDesk } from "@/lib/services/walks/read";

const desk = (code: string, floor: string, seen = false): WalkDesk => ({
  code,
  floor,
  zoneCode: "z",
  note: "",
  devices: [],
  entries: seen ? [{ clientId: `id-${code}`, kind: "nothing" }] : [],
});
const desks = [desk("1-1", "1", true), desk("1-2", "1"), desk("1-3", "1"), desk("2-1", "2")];

describe("the walk's order", () => {
  it("counts desks that the server or this phone has seen, once each", () => {
    expect(progressWords(desks, [])).toBe("1 of 4 desks");
    expect(progressWords(desks, [{ deskCode: "1-1" }, { deskCode: "1-2" }, { deskCode: "1-2" }])).toBe("2 of 4 desks");
    expect(floorLines(desks, [{ deskCode: "2-1" }])).toEqual([
      { floor: "1", done: 1, of: 3 },
      { floor: "2", done: 1, of: 1 },
    ]);
  });

  it("goes to the next desk that nobody has seen, past the end to those left out, and never to another floor", () => {
    expect(nextDesk(desks, [], "1", null)?.code).toBe("1-2");
    expect(nextDesk(desks, [{ deskCode: "1-3" }], "1", "1-3")?.code).toBe("1-2");
    expect(nextDesk(desks, [{ deskCode: "1-2" }, { deskCode: "1-3" }], "1", "1-3")).toBeNull();
  });
});

describe("labels from a roll", () => {
  it("counts on, keeps the zeros and passes over what is taken", () => {
    expect(labelAfter("H-013", new Set(["H-014"]))).toBe("H-015");
    expect(labelAfter("H-099", new Set())).toBe("H-100");
    expect(labelAfter("heater by the door", new Set())).toBe("");
  });

  it("takes the roll that most labels come from", () => {
    expect(lastLabel(["H-002", "H-010", "F-100", "odd"])).toBe("H-010");
    expect(lastLabel([])).toBe("D-000");
  });
});

describe("the sheet of a device that was found", () => {
  it("asks for the settings that heat or blow first", () => {
    const heater = deviceClassById("fan-heater-1500");
    const mat = deviceClassById("usb-fan");
    if (!heater || !mat) throw new Error("no class");
    expect(readingOrder(heater)).toEqual({ first: ["low-heat", "high-heat"], later: ["off", "fan-only"] });
    expect(readingOrder(mat).later).toEqual(["off"]);
  });

  it("reads what is typed with a thumb, and says what cannot be", () => {
    expect(readingOf("1443", "W")).toEqual({ value: 1443 });
    expect(readingOf("6,2", "A")).toEqual({ value: 6.2 });
    expect(readingOf(".5", "A")).toEqual({ value: 0.5 });
    expect(readingOf("", "A")).toEqual({ value: null });
    expect(readingOf("1200", "A")).toHaveProperty("fault");
    expect(readingOf("12-1", "W")).toHaveProperty("fault");
  });

  it("has a picture for every class, and puts the last one met first", () => {
    expect([...PICTURED_CLASSES].sort()).toEqual(DEVICE_CLASSES.map(({ id }) => id).sort());
    const order = classesInOrder(DEVICE_CLASSES, ["usb-fan"], 230).map(({ id }) => id);
    expect(order[0]).toBe("usb-fan");
    expect(order.indexOf("fan-heater-2kw")).toBeLessThan(order.indexOf("fan-heater-1500"));
  });
});
