/** Colours of the tokens that charts draw with, as the stylesheet resolves them now. */
export type ChartTheme = {
  paper: string;
  ink: string;
  inkSoft: string;
  rule: string;
  cold: string;
  warm: string;
  comfortBand: string;
  stateCooling: string;
  stateReheat: string;
  stateDeadband: string;
  stateUndetermined: string;
  stateFault: string;
  fontFamily: string;
};

/** Reads the registered tokens at an element, in the scheme that holds there. */
export function readChartTheme(element: Element): ChartTheme {
  const style = getComputedStyle(element);
  const token = (name: string): string => style.getPropertyValue(name).trim();
  return {
    paper: token("--paper"),
    ink: token("--ink"),
    inkSoft: token("--ink-soft"),
    rule: token("--rule"),
    cold: token("--cold"),
    warm: token("--warm"),
    comfortBand: token("--comfort-band"),
    stateCooling: token("--state-cooling"),
    stateReheat: token("--state-reheat"),
    stateDeadband: token("--state-deadband"),
    stateUndetermined: token("--state-undetermined"),
    stateFault: token("--state-fault"),
    fontFamily: style.fontFamily,
  };
}
