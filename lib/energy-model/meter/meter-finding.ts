import type { Finding } from "@/lib/findings/finding";
import type { FitFindingCode } from "../change-point/qualify-fit";

export type MeterFindingCode =
  | FitFindingCode
  | "days-few"
  | "days-missing"
  | "bills-few"
  | "energy-unusual"
  | "outdoor-missing"
  | "no-model"
  | "no-cooling-change-point"
  | "beyond-fitted-temperatures"
  | "saving-below-noise";

export type MeterFinding = Finding<MeterFindingCode>;
