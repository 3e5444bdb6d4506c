import type { RandomSource } from "@/lib/statistics/random";
import { logistic, preferenceShares, type VoteSeason, voteSeason } from "./comfort-votes";
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
const CHANCE_BY_STRENGTH = [0.0005, 0.001, 0.016, 0.06];
/** People differ in what they like [K, standard deviation]. Judgement, no source. */
const PERSON_SPREAD_K = 0.6;
/** Share of the votes of a sound zone's other desks that are sent where one desk has all the draught. Judgement, no source. */
const CONTENT_NEIGHBOURS = 0.03;
/** How much warmer the person beside a running heater feels. Judgement, no source. */
const HEATER_FEELS_K = 0.7;

/** Comfort reports of a zone, drawn from the true air at its desks and never from what its sensor reads. */
export function drawReports(zone: SimulatedZone, fanDesks: ReadonlySet<number>, calendar: DemoCalendar): ReportDraft[] {
  const reports: ReportDraft[] = [];
  zone.desks.forEach((desk, d) => {
    const random = streamOf(`${desk.code}/reports`);
    const inDraught = zone.plan.coldDesk?.desk === d;
    // The one in the draught is an ordinary person: it is the desk that is cold.
    const personK = (inDraught ? 0 : PERSON_SPREAD_K) * normal(random);
    const heater = zone.heaters.find(({ device }) => device.desk === d);
    const eagerness = zone.plan.coldDesk !== null && !inDraught ? CONTENT_NEIGHBOURS : 1;
    let reportedOn = -1;
    for (let i = 0; i < calendar.span.count; i++) {
      if (!MOMENTS_MINUTE.includes(calendar.minuteOfDay[i] as number) || desk.present[i] !== 1) continue;
      const heaterInUse = heater?.on[i] === 1;
      const airTempC = (zone.run.airTempC[i] as number) + desk.offsetK;
      const vote = drawVote(random, voteSeason(calendar.month[i] as number), {
        // A heater at the feet does not help against cold air on the neck.
        feltC: airTempC + personK + (heaterInUse && !inDraught ? HEATER_FEELS_K : 0),
      });
      const sent = random() < eagerness * (CHANCE_BY_STRENGTH[Math.abs(vote.thermalSensation)] ?? 0);
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

/**
 * Air temperatures at which half of those who want it warmer (cooler) feel cool (warm) and cold (hot) rather than
 * slightly so. Lighter clothes in summer put the cold ones higher. Judgement, no source.
 */
const STRENGTH_C = {
  summer: { cold: 20.8, cool: 22.3, warm: 25.3, hot: 26.8 },
  winter: { cold: 19.4, cool: 21, warm: 24.8, hot: 26.4 },
} as const;
const STRENGTH_SPREAD_K = 0.6;

/** A vote by the field shares; how strongly it is felt grows with the distance from where few would feel it. */
function drawVote(
  random: RandomSource,
  season: VoteSeason,
  { feltC }: { feltC: number },
): Pick<ReportDraft, "thermalSensation" | "preference"> {
  const shares = preferenceShares(season, feltC);
  const at = STRENGTH_C[season];
  const u = random();
  const strong = random();
  const colder = (thanC: number): boolean => strong < logistic((thanC - feltC) / STRENGTH_SPREAD_K);
  const warmer = (thanC: number): boolean => strong < logistic((feltC - thanC) / STRENGTH_SPREAD_K);
  if (u < shares.warmer)
    return { preference: "warmer", thermalSensation: colder(at.cold) ? -3 : colder(at.cool) ? -2 : -1 };
  if (u < shares.warmer + shares.cooler)
    return { preference: "cooler", thermalSensation: warmer(at.hot) ? 3 : warmer(at.warm) ? 2 : 1 };
  return { preference: "no-change", thermalSensation: strong < 0.1 ? -1 : strong > 0.9 ? 1 : 0 };
}
