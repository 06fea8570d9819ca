import { notesHolding } from '../../notes/holding.ts';
import { fail, ok, type Problem, type Result } from '../../result.ts';
import { DEFAULT_MARGINS } from '../../rules/rule.ts';
import { fieldFor } from '../field.ts';
import { layNotes } from '../noted/lay-notes.ts';
import type { Lessons } from '../past/judge-way.ts';
import { emptyOverlay } from '../search/overlay.ts';
import type { Field, Question } from '../search/question.ts';
import type { PlanStop } from './lay-legs.ts';
import type { PlanInput, Planned } from './plan-input.ts';
import { placeFault, placeProblem, sayNoLeg } from './say-faults.ts';
import { snap } from './snap.ts';

/** Places on their roads, with what every search between them shares. */
export interface Laying {
  readonly stops: readonly PlanStop[];
  readonly base: Question;
  readonly lessons: Lessons;
}

/** Nothing was laid: a leg that no road serves, or a leave time that cannot be read there. */
export type Unlaid = { readonly leg: number } | { readonly fault: Problem };

/**
 * Lays a plan out, each try with less to go by: places on the nearest roads that the vehicle may use; then, as nothing
 * led from one to the other, on roads that are known to lead somewhere; then by ferry.
 */
export function tryLayings<T extends object>(
  input: PlanInput,
  lay: (laying: Laying) => T | Unlaid,
): Result<T & Pick<Planned, 'places'>> {
  const fault = placeFault(input.places);
  if (fault !== undefined) return fault;
  const field = fieldFor(
    input.roads,
    { card: input.card, load: input.load, margins: input.margins ?? DEFAULT_MARGINS },
    { prefer: input.prefer ?? 'quickest', country: input.country, guesses: true, lookUp: input.lookUp },
  );
  const nearest = layingOn(input, field, 'nearest');
  if (!nearest.ok) return nearest;
  let laying = nearest.value;
  let laid = lay(laying);
  // the try that came farthest tells what stops a plan
  let [farthest, leg] = [laying, -1];
  const note = () => {
    if ('leg' in laid && laid.leg > leg) [farthest, leg] = [laying, laid.leg];
  };
  note();
  if ('leg' in laid) {
    const leading = layingOn(input, field, 'leading');
    if (!leading.ok) return leading;
    if (!isSame(laying, leading.value)) {
      laying = leading.value;
      laid = lay(laying);
      note();
    }
  }
  if ('leg' in laid) {
    laying = { ...laying, base: { ...laying.base, terms: { ferries: true } } };
    laid = lay(laying);
    note();
  }
  if ('fault' in laid) return { ok: false, error: laid.fault };
  if ('leg' in laid) return fail('no way', sayNoLeg(leg, mustTurn(farthest, leg, lay)));
  return ok({ ...laid, places: laying.stops.map(({ at, awayM }) => ({ at, awayM })) });
}

/** Whether a leg that was not laid is one for a vehicle that begins there, whichever way it is headed. */
function mustTurn(laying: Laying, leg: number, lay: (laying: Laying) => object): boolean {
  if (leg === 0) return false;
  const alone = lay({ ...laying, stops: laying.stops.slice(leg, leg + 2) });
  return !('leg' in alone) && !('fault' in alone);
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
    if (typeof snapped === 'string') return placeProblem(input, i, snapped);
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
