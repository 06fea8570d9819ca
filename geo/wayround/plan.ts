import { itemAt } from '../lists.ts';
import type { Finding } from '../report/finding.ts';
import { ok, type Result } from '../result.ts';
import { lengthOf } from './along/splice.ts';
import { isDoubt, type JudgedWay, learn } from './past/judge-way.ts';
import { pathOf } from './past/tell-way.ts';
import { type Checked, checkParts } from './plan/check-parts.ts';
import { mustTurnToLeave } from './plan/finish.ts';
import { layJudged } from './plan/lay-judged.ts';
import type { Laying, Unlaid } from './plan/laying.ts';
import { tryLayings } from './plan/layings.ts';
import type { LaidParts } from './plan/leg-parts.ts';
import type { PlanInput, Planned, PlanSketch } from './plan/plan-input.ts';
import { sayFinish, sayPlaces } from './plan/say-places.ts';

/** Searches and checks in turn, at most so often. */
const MOST_TRIES = 10;

/**
 * A drive for this vehicle through two places or more, checked by the checker itself. Order is kept; no place between
 * turns the vehicle round but a stop on a site's own road that no other way serves; each is put on the nearest road that
 * the vehicle may use and that leads somewhere.
 * @returns a problem whose code is `place …` with a place that cannot be used, or `no way` with the leg that no road
 * serves and what stops it
 */
export function planDrive(input: PlanInput): Result<Planned> {
  const laid = tryLayings(input, settlePlan);
  if (!laid.ok) return laid;
  const { value, laying, passedOver } = laid.value;
  const { placesM, turnsAt, turnsToLeave, ...settled } = value;
  const ofPlaces = sayPlaces(laying, passedOver, turnsAt, input.units);
  const say = [...(turnsToLeave ? [sayFinish(laying)] : []), ...ofPlaces];
  const { report, route } = settled;
  return ok({
    ...settled,
    // written down, and checked once more, the drive itself tells of its end
    route: turnsToLeave ? { ...route, turnAtEnd: true } : route,
    say,
    ofPlaces,
    report: say.length === 0 ? report : { ...report, cautions: [...report.cautions, ...say] },
    places: laying.stops.map(({ at, awayM }, i) => ({ at, awayM, alongM: placesM[i] ?? 0 })),
  });
}

/**
 * The same without any check of it: the line of the least-cost way by what the roads' own tags say, and what it costs.
 * No drive through these places on these roads costs less.
 */
export function sketchPlan(input: PlanInput): Result<PlanSketch> {
  const laid = tryLayings<PlanSketch>(input, (_, { stops, base }) => {
    const found = layJudged(stops, base);
    if (found.parts === undefined) return { leg: found.leg };
    const { costs } = base.field;
    return {
      path: pathOf(found.parts, costs.roads, costs.graph),
      costTenths: found.costTenths,
      turnsToLeave: mustTurnToLeave(base, endsOn(found)),
    };
  });
  return laid.ok ? ok(laid.value.value) : laid;
}

type Settled = Omit<Planned, 'places' | 'say' | 'ofPlaces'> &
  Omit<LaidParts, 'parts'> & { readonly turnsToLeave: boolean };

/** The directed edge that a drive ends on. */
function endsOn({ parts }: Pick<LaidParts, 'parts'>): number {
  return itemAt(parts, parts.length - 1).directed;
}

function settlePlan(input: PlanInput, { stops, base, lessons }: Laying): Settled | Unlaid {
  let question = base;
  let unlaid: Unlaid = { leg: 0 };
  let passed: Settled | undefined;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const laid = layJudged(stops, question);
    if (laid.parts === undefined) {
      unlaid = { leg: laid.leg };
      break;
    }
    const { costTenths, placesM, turnsAt } = laid;
    const checked = checkParts(input, laid, { stops, field: base.field });
    if ('fault' in checked) return checked;
    if (question.terms.clockAt === undefined && checked.clockAt !== undefined) {
      // now that the place it leaves from is known, so is its clock
      question = { ...base, terms: { ...base.terms, clockAt: checked.clockAt } };
      if (
        checked.report.findings.some(
          ({ leaveTimes, passesAt, level }) => level === 'barred' || (leaveTimes ?? passesAt) !== undefined,
        )
      )
        continue;
    }
    const { report } = checked;
    const bars = report.findings.filter(({ level }) => level === 'barred');
    const turnsToLeave = input.turnsToLeave ?? mustTurnToLeave(base, endsOn(laid));
    const found = { placesM, turnsAt, turnsToLeave, costTenths, searches: tries + 1 };
    if (bars.length === 0) passed = { ...keptOf(checked), ...found };
    else unlaid = { leg: legOf(bars[0] as Finding, placesM), bars };
    const judged: JudgedWay = {
      detour: { fromM: 0, toM: 0, parts: laid.parts, costTenths: 0, gives: 0 },
      lengthM: lengthOf(laid.parts),
      extraS: 0,
      findings: report.findings,
      bars,
    };
    const weighed = passed !== undefined && !report.findings.some(isDoubt);
    if (weighed || !learn({ steps: [] }, judged, lessons)) break;
  }
  return passed ?? unlaid;
}

/** The leg that a finding lies on, counted from 0. */
function legOf({ fromM }: Finding, placesM: readonly number[]): number {
  const after = placesM.findIndex((placeM) => placeM > fromM);
  return Math.max(0, (after < 0 ? placesM.length - 1 : after) - 1);
}

function keptOf({ route, drive, report, stops }: Checked): Omit<Checked, 'clockAt'> {
  return { route, drive, report, stops };
}
