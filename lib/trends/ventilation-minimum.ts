/** Ventilation and box limits that a minimum airflow must respect. Rates come from the assumptions (office: 2.5 L/s·person, 0.3 L/s·m²). */
export type VentilationInput = {
  people: number;
  floorAreaM2: number;
  ratePerPersonM3ps: number;
  ratePerAreaM3psPerM2: number;
  /** Zone air distribution effectiveness Ez: 1.0 cooling, 0.8 warm air from the ceiling. */
  distributionEffectiveness: number;
  designAirflowM3ps: number | null;
  /** Least airflow that the box can hold, as a fraction of design. */
  controllableFraction: number;
};

export type VentilationMinimum =
  | {
      status: "ok";
      /** Zone outdoor airflow V_oz [m³/s]. */
      ventilationM3ps: number;
      /** Least controllable airflow of the box [m³/s]; null without a design airflow. */
      controllableM3ps: number | null;
      /** The larger of the two [m³/s]: no minimum may be proposed below it. */
      requiredM3ps: number;
      /** Ventilation as a fraction of design airflow; null without one. */
      ventilationFractionOfDesign: number | null;
    }
  | { status: "outside-limits"; limits: string };

/**
 * Least airflow a zone may be given: V_req = max((Rp·P + Ra·A) / Ez, controllable minimum), reference D4 (ASHRAE 62.1
 * form, rates from memory there). It sets outdoor airflow against supply airflow as if all supply air were outdoor air;
 * in a multiple-zone system the outdoor air fraction and the system efficiency Ev must be checked by an engineer, so
 * this is a bound for a proposal and never a setting.
 */
export function ventilationMinimum(zone: VentilationInput): VentilationMinimum {
  if (!(zone.people >= 0) || !(zone.floorAreaM2 > 0)) {
    return { status: "outside-limits", limits: "people must be 0 or more and the floor area above 0 m²" };
  }
  if (!(zone.distributionEffectiveness > 0)) {
    return { status: "outside-limits", limits: "the distribution effectiveness must be above 0" };
  }
  const breathingM3ps = zone.ratePerPersonM3ps * zone.people + zone.ratePerAreaM3psPerM2 * zone.floorAreaM2;
  const ventilationM3ps = breathingM3ps / zone.distributionEffectiveness;
  const design = zone.designAirflowM3ps;
  const controllableM3ps = design === null ? null : design * zone.controllableFraction;
  return {
    status: "ok",
    ventilationM3ps,
    controllableM3ps,
    requiredM3ps: Math.max(ventilationM3ps, controllableM3ps ?? 0),
    ventilationFractionOfDesign: design === null ? null : ventilationM3ps / design,
  };
}
