import type { Level } from '../../../report/level.ts';
import { MODEL_OFF_M } from '../../model-off.ts';
import type { Scene } from '../scene/scene.ts';
import { type Contact, contactOf, leastGapOf } from './contact.ts';
import { gapNeededM } from './gap-needed.ts';
import { type OverLine, overLines } from './over-line.ts';
import type { Reading } from './read-scene.ts';
import type { Separation } from './separation.ts';
import { mostSwingM } from './swings.ts';

/** The figure that decides a lesson. Metres. */
export type Decides =
  /** the lesson is about a gap: gap − what comes out there = spare */
  | { readonly kind: 'gap'; readonly gapM: number; readonly swingM: number; readonly spareM: number }
  /** something is touched, and how deep says little: a wheel on a kerb is never in deeper than its tyre */
  | { readonly kind: 'touch'; readonly contact: Contact }
  /** the kerb or painted line that a corner passes farthest */
  | { readonly kind: 'over'; readonly over: OverLine }
  /** the least room of the whole way */
  | { readonly kind: 'spare'; readonly least: Separation }
  | { readonly kind: 'swing'; readonly swingM: number };

/** What one vehicle's lesson comes to. */
export interface Judged {
  readonly level: Level;
  readonly decides: Decides;
  /** what is touched first */
  readonly contact: Contact | undefined;
  /** the kerb or painted line that a corner passes farthest */
  readonly over: OverLine | undefined;
  /** the least room to anything hard; not looked for where something is touched */
  readonly least: Separation | undefined;
  readonly mostSwingM: number;
  /** full lock is an estimate: the same at its tightest and at its widest */
  readonly ends?: readonly [tightest: Judged, widest: Judged];
}

/** The end that swings out. */
export function swingingEnd({ reversing }: Pick<Scene, 'reversing'>): 'tail' | 'nose' {
  return reversing ? 'nose' : 'tail';
}

/** The gap beside the vehicle, in the lessons that are about it. Metres. */
export function gapBesideM({ lesson, settings }: Scene): number | undefined {
  return settings && (lesson === 'leave' || lesson === 'reverse') ? settings.gapM : undefined;
}

/**
 * As for a drive: a touch is barred; over a kerb or a line, or less than the margin left, is tight.
 * @param marginM wanted to what is hard
 */
export function judgeScene(scene: Scene, marginM: number): Judged {
  const contact = contactOf(scene);
  const least = contact ? undefined : leastGapOf(scene);
  const gap = gapThatDecides(scene, contact, least);
  const [over] = overLines(scene);
  const swingM = mostSwingM(scene);
  const spareM = Math.min(gap?.spareM ?? Number.POSITIVE_INFINITY, least?.gapM ?? Number.POSITIVE_INFINITY);
  return {
    level:
      contact && !isOverDome(scene, contact)
        ? 'barred'
        : contact || over || spareM < marginM
          ? 'tight'
          : 'care',
    decides: gap ?? decidesWithoutGap({ contact, over, least, swingM }),
    contact,
    over,
    least,
    mostSwingM: swingM,
  };
}

/** Nothing is touched as worked out, and yet no more room is left than that may be off. */
export function mayTouch({ contact, least }: Judged): boolean {
  return !contact && least !== undefined && least.gapM < MODEL_OFF_M;
}

/** A mini-roundabout's dome may be run over where there is no other way; nothing else is touched on the whole run. */
function isOverDome(scene: Scene, contact: Contact): boolean {
  if (contact.fixture.role !== 'dome') return false;
  return (
    contactOf({ ...scene, fixtures: scene.fixtures.filter(({ role }) => role !== 'dome') }) === undefined
  );
}

/** Room that differs by less is the same room. Metres. */
const SAME_M = 0.005;

/** @returns undefined where the lesson is not about a gap, or something is touched or nearer though the gap is wide enough */
function gapThatDecides(
  scene: Scene,
  contact: Contact | undefined,
  least: Separation | undefined,
): Extract<Decides, { kind: 'gap' }> | undefined {
  const gapM = gapBesideM(scene);
  if (gapM === undefined) return undefined;
  const swingM = gapNeededM(scene);
  const spareM = gapM - swingM;
  const nearer = contact !== undefined || (least !== undefined && least.gapM < spareM - SAME_M);
  return nearer && spareM > 0 ? undefined : { kind: 'gap', gapM, swingM, spareM };
}

function decidesWithoutGap(found: {
  readonly contact: Contact | undefined;
  readonly over: OverLine | undefined;
  readonly least: Separation | undefined;
  readonly swingM: number;
}): Decides {
  const { contact, over, least, swingM } = found;
  if (contact) return { kind: 'touch', contact };
  if (over) return { kind: 'over', over };
  return least ? { kind: 'spare', least } : { kind: 'swing', swingM };
}

/** Steered by hand the moment counts: what stands there is touched, or it is not. */
export function isTouching({ nearestM }: Pick<Reading, 'nearestM'>): boolean {
  return nearestM <= 0;
}

/** The level of a moment steered by hand. */
export function levelByHand(reading: Reading): Level {
  return isTouching(reading) ? 'barred' : 'care';
}
