import type { RandomSource } from "@/lib/statistics/random";
import { logistic, preferenceShares, voteSeason } from "./comfort-votes";
import { type DemoCalendar, STEP_SECONDS } from "./demo-calendar";
import { normal, streamOf } from "./normal";
import { reportNote } from "./report-notes";
import type { SimulatedZone } from "./simulate-plan";

export type ReportDraft = {
  desk: number;
  atUtcSeconds: number;
  thermalSensation: number;
  preference: "cooler" | "no-change" | "warmer";
  heaterInUse: boolean;
  fanInUse: boolean;
  draught: boolean;
  note: string;
};

/** Moments of the day at which each person who is there may feel moved to report. */
const MOMENTS_MINUTE = [10 * 60 + 30, 15 * 60];
/** Chance that a vote of this strength is sent at such a moment: mostly unhappy people report. Judgement, no source. */
const CHANCE_BY_STRENGTH = [0.0004, 0.0012, 0.013, 0.05];
/** People differ in what they like [K, standard deviation]. Judgement, no source. */
const PERSON_SPREAD_K = 0.6;
/** How much warmer the person beside a running heater feels. Judgement, no source. */
const HEATER_FEELS_K = 0.7;

/** Comfort reports of a zone, drawn from the true air at its desks and never from what its sensor reads. */
export function drawReports(zone: SimulatedZone, fanDesks: ReadonlySet<number>, calendar: DemoCalendar): ReportDraft[] {
  const reports: ReportDraft[] = [];
  zone.desks.forEach((desk, d) => {
    const random = streamOf(`${desk.code}/reports`);
    const personK = PERSON_SPREAD_K * normal(random);
    const heater = zone.heaters.find(({ device }) => device.desk === d);
    const inDraught = zone.plan.coldDesk?.desk === d;
    let reportedOn = -1;
    for (let i = 0; i < calendar.span.count; i++) {
      if (!MOMENTS_MINUTE.includes(calendar.minuteOfDay[i] as number) || desk.present[i] !== 1) continue;
      const heaterInUse = heater?.on[i] === 1;
      const airTempC = (zone.run.airTempC[i] as number) + desk.offsetK;
      const vote = drawVote(random, voteSeason(calendar.month[i] as number), {
        // A heater at the feet does not help against cold air on the neck.
        feltC: airTempC + personK + (heaterInUse && !inDraught ? HEATER_FEELS_K : 0),
      });
      const sent = random() < (CHANCE_BY_STRENGTH[Math.abs(vote.thermalSensation)] ?? 0);
      if (!sent || reportedOn === calendar.day[i]) continue;
      reportedOn = calendar.day[i] as number;
      const cold = vote.thermalSensation < 0;
      const draught = cold && random() < (inDraught ? 0.85 : 0.12);
      const about = draught ? "draught" : cold ? "cold" : vote.thermalSensation > 0 ? "hot" : "fine";
      reports.push({
        desk: d,
        atUtcSeconds: calendar.span.startUtcSeconds + i * STEP_SECONDS + Math.floor(random() * STEP_SECONDS),
        ...vote,
        heaterInUse,
        fanInUse: fanDesks.has(d) && airTempC > 24,
        draught,
        note: reportNote(random, about),
      });
    }
  });
  return reports.sort((a, b) => a.atUtcSeconds - b.atUtcSeconds);
}

/** A vote by the field shares; how strongly it is felt grows with the distance from where few would feel it. Judgement. */
function drawVote(
  random: RandomSource,
  season: "summer" | "winter",
  { feltC }: { feltC: number },
): Pick<ReportDraft, "thermalSensation" | "preference"> {
  const shares = preferenceShares(season, feltC);
  const u = random();
  const strong = random();
  if (u < shares.warmer) {
    if (strong < logistic((20.2 - feltC) / 0.6)) return { preference: "warmer", thermalSensation: -3 };
    if (strong < logistic((21.7 - feltC) / 0.6)) return { preference: "warmer", thermalSensation: -2 };
    return { preference: "warmer", thermalSensation: -1 };
  }
  if (u < shares.warmer + shares.cooler) {
    if (strong < logistic((feltC - 26.4) / 0.6)) return { preference: "cooler", thermalSensation: 3 };
    if (strong < logistic((feltC - 24.8) / 0.6)) return { preference: "cooler", thermalSensation: 2 };
    return { preference: "cooler", thermalSensation: 1 };
  }
  return { preference: "no-change", thermalSensation: strong < 0.1 ? -1 : strong > 0.9 ? 1 : 0 };
}
