import { checkDrive } from '../check.ts';
import type { Drive } from '../drive/drive.ts';
import { stretchesOf } from '../drive/match/lay-legs.ts';
import type { EdgePart } from '../drive/match/trace-paths.ts';
import { readLeaving } from '../drive/times/leaving.ts';
import type { Problem, Result } from '../result.ts';
import { brokenTurns, lengthOf } from './along/splice.ts';
import { isDoubt, type JudgedWay, learn } from './past/judge-way.ts';
import { pathOf } from './past/tell-way.ts';
import { denseRoute } from './plan/dense-route.ts';
import { layJudged } from './plan/lay-judged.ts';
import { type Laying, tryLayings, type Unlaid } from './plan/layings.ts';
import type { PlanInput, Planned, PlanSketch } from './plan/plan-input.ts';
import { clockFor } from './search/clock.ts';
import type { Question } from './search/question.ts';

/** Searches and checks in turn, at most so often. */
const MOST_TRIES = 10;

/**
 * A drive for this vehicle through two places or more, checked by the checker itself. Order is kept, no place between
 * turns the vehicle round, and each is put on the nearest road that the vehicle may use and that leads somewhere.
 * @returns a problem whose code is `place …` with a place that cannot be used, or `no way` where no road leads on
 */
export function planDrive(input: PlanInput): Result<Planned> {
  return tryLayings(input, (laying) => settlePlan(input, laying));
}

/**
 * The same without any check of it: the line of the least-cost way by what the roads' own tags say, and what it costs.
 * No drive through these places on these roads costs less.
 */
export function sketchPlan(input: PlanInput): Result<PlanSketch> {
  return tryLayings<PlanSketch>(input, ({ stops, base }) => {
    const laid = layJudged(stops, base);
    if (laid.parts === undefined) return { leg: laid.leg };
    const { costs } = base.field;
    return { path: pathOf(laid.parts, costs.roads, costs.graph), costTenths: laid.costTenths };
  });
}

type Settled = Omit<Planned, 'places'>;

function settlePlan(input: PlanInput, { stops, base, lessons }: Laying): Settled | Unlaid {
  let question = base;
  let leg = 0;
  let passed: Settled | undefined;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const laid = layJudged(stops, question);
    if (laid.parts === undefined) {
      leg = laid.leg;
      break;
    }
    const { costTenths } = laid;
    const checked = checkParts(input, laid.parts, base);
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
    if (bars.length === 0) passed = { ...keptOf(checked), costTenths, searches: tries + 1 };
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
  return passed ?? { leg };
}

function keptOf({ route, drive, report }: Checked): Pick<Planned, 'route' | 'drive' | 'report'> {
  return { route, drive, report };
}

interface Checked extends Pick<Planned, 'route' | 'drive' | 'report'> {
  readonly clockAt: ReturnType<typeof clockFor> | undefined;
}

function checkParts(
  input: PlanInput,
  parts: readonly EdgePart[],
  { field }: Question,
): Checked | { readonly fault: Problem } {
  const { roads, country, leave, name = '' } = input;
  const { graph } = field.costs;
  const legs = stretchesOf(parts, 0, graph);
  const bare: Drive = { lengthM: lengthOf(parts), legs, guessed: [], doubtful: [], brokenTurns: [] };
  const drive = { ...bare, brokenTurns: brokenTurns(bare, roads, graph) };
  const route = denseRoute(drive, roads, name);
  const read = leave === undefined ? undefined : readLeaving(leave, drive, roads, country);
  if (read?.ok === false) return { fault: read.error };
  const leaving = read?.value;
  const { places: _, prefer: __, leave: ___, name: ____, ...rest } = input;
  const report = checkDrive({
    ...rest,
    route,
    file: `${name || 'plan'}.gpx`,
    drive,
    ...(leaving && { leaving }),
  });
  return { route, drive, report, clockAt: leaving && clockFor(roads, leaving, country) };
}
