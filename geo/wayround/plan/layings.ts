import { notesHolding } from '../../notes/holding.ts';
import type { Finding } from '../../report/finding.ts';
import { fail, ok, type Result } from '../../result.ts';
import { DEFAULT_MARGINS } from '../../rules/rule.ts';
import { fieldFor } from '../field.ts';
import { layNotes } from '../noted/lay-notes.ts';
import { emptyOverlay } from '../search/overlay.ts';
import type { Field, Question } from '../search/question.ts';
import type { Laid, Lay, Laying } from './laying.ts';
import type { PlanStop } from './leg-parts.ts';
import type { PlanInput } from './plan-input.ts';
import { placeFault, placeProblem } from './say-faults.ts';
import { snap } from './snap.ts';
import { withTurns } from './turn-ground.ts';
import { whyNoLeg, whyNotNearer } from './why-no-leg.ts';

/**
 * Lays a plan out, each try with less to go by: places on the nearest roads that the vehicle may use; turning round where
 * it stops, on a site's own ground; by ferry; then, as nothing led from one to the other, on roads that are known to lead
 * somewhere.
 */
export function tryLayings<T extends object>(input: PlanInput, lay: Lay<T>): Result<Laid<T>> {
  const fault = placeFault(input.places);
  if (fault !== undefined) return fault;
  const field = fieldOf(input);
  const nearest = layingOn(input, field, 'nearest');
  if (!nearest.ok) return nearest;
  let farthest = { laying: nearest.value, leg: -1, bars: undefined as readonly Finding[] | undefined };
  let near = farthest;
  for (const laying of layings(input, field, nearest.value)) {
    const laid = lay(input, laying);
    if ('fault' in laid) return { ok: false, error: laid.fault };
    const isNear = isSame(laying, nearest.value);
    if (!('leg' in laid)) {
      const why = isNear ? undefined : whyNotNearer(input, near, { lay, layAlone });
      return ok({
        value: laid,
        laying,
        ...(why !== undefined && { passedOver: { laying: nearest.value, why } }),
      });
    }
    // the try that came farthest tells what stops a plan
    if (laid.leg > farthest.leg) farthest = { laying, leg: laid.leg, bars: laid.bars };
    if (isNear) near = farthest;
  }
  return fail('no way', whyNoLeg(input, farthest, { lay, layAlone }));
}

function* layings(input: PlanInput, field: Field, nearest: Laying): Generator<Laying> {
  yield nearest;
  const turning = withTurns(nearest);
  if (turning !== nearest) yield turning;
  yield byFerry(turning);
  const leading = layingOn(input, field, 'leading');
  if (!leading.ok || isSame(nearest, leading.value)) return;
  if (leading.value.stops.some((stop, i) => isElsewhere(stop, nearest.stops[i]))) return;
  const turningThere = withTurns(leading.value);
  yield turningThere;
  yield byFerry(turningThere);
}

/** A place put on another road than the nearest is still that place so far from it: to be walked. Metres; judgement. */
const MOVED_MOST_M = 250;

function isElsewhere(stop: PlanStop, near: PlanStop | undefined): boolean {
  return stop.directed.join() !== near?.directed.join() && stop.awayM > MOVED_MOST_M;
}

function byFerry(laying: Laying): Laying {
  return { ...laying, base: { ...laying.base, terms: { ferries: true } } };
}

/** The same places for another vehicle, or a part of them alone. */
function layAlone(input: PlanInput): Result<Laying> {
  const laying = layingOn(input, fieldOf(input), 'nearest');
  return laying.ok ? ok(byFerry(withTurns(laying.value))) : laying;
}

function fieldOf(input: PlanInput): Field {
  return fieldFor(
    input.roads,
    { card: input.card, load: input.load, margins: input.margins ?? DEFAULT_MARGINS },
    { prefer: input.prefer ?? 'quickest', country: input.country, guesses: true, lookUp: input.lookUp },
  );
}

function layingOn(input: PlanInput, field: Field, roads: 'nearest' | 'leading'): Result<Laying> {
  // where a road leads is found by the moves from it, and those are made on judged roads
  if (roads === 'leading') field.costs.guessNoMore();
  const overlay = emptyOverlay();
  const { lookUp, localNotes, leave, made } = input;
  const base: Question = { field, terms: { ferries: false }, overlay, sources: [], targets: [], lookUp };
  const stops: PlanStop[] = [];
  for (const [i, place] of input.places.entries()) {
    const leads = i === input.places.length - 1 ? 'from' : 'on';
    const asked = { ...base, terms: { ferries: true } };
    const snapped = snap(place, asked, roads === 'nearest' ? undefined : leads);
    if ('none' in snapped) return placeProblem(input, i, snapped);
    stops.push({ ...snapped, stop: place.stop === true });
  }
  layNotes(overlay, {
    costs: field.costs,
    notes: notesHolding(localNotes, leave ?? made),
    spared: new Set(stops.flatMap(({ directed }) => directed.map((one) => one >> 1))),
  });
  return ok({ stops, base, lessons: { overlay, learnt: new Set(), doubtFree: false } });
}

function isSame(a: Laying, b: Laying): boolean {
  return a.stops.every(({ directed }, i) => directed.join() === b.stops[i]?.directed.join());
}
