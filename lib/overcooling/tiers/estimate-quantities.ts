import type { AssessmentInput } from "../assessment-input";
import { exact, type Input } from "../calculation/quantity";

export const floorArea = (input: AssessmentInput): Input =>
  exact({
    symbol: "A",
    label: "floor area",
    unit: "m²",
    value: input.floorAreaM2,
    origin: "entered",
    source: "building settings",
    href: "/settings",
  });

export const presentSetpoint = (value: number, origin: "measured" | "entered"): Input =>
  exact({
    symbol: "T_set",
    label: "present occupied cooling setpoint",
    unit: "°C",
    value,
    origin,
    source: origin === "measured" ? "median of the zones' occupied setpoint trends" : "as stated for the building",
  });
