import type { Level } from '../../geo/report/report.ts';
import { type LeastGap, leastGapOf } from '../../geo/swing/lessons/contact.ts';
import { gapNeededM } from '../../geo/swing/lessons/gap-needed.ts';
import { type OverLine, overLines } from '../../geo/swing/lessons/over-line.ts';
import { swingsOfScene } from '../../geo/swing/lessons/read-scene.ts';
import type { Contact, Scene } from '../../geo/swing/lessons/scene.ts';
import { cmText } from './words.ts';

/** What decides beside something: gap − what comes out there = spare, in metres. */
export interface SwingSum {
  readonly gapM: number;
  readonly swingM: number;
  readonly spareM: number;
}

/** Less is not worth a word. Metres. */
const LEAST_OVER_M = 0.015;

/** The gap beside the vehicle, in the lessons that are about it. */
export function gapOf({ lesson, settings }: Scene): number | undefined {
  return settings && (lesson === 'leave' || lesson === 'reverse') ? settings.gapM : undefined;
}

/** The most that tail or nose comes out on the whole way. */
export function mostSwingM(scene: Scene): number {
  return swingsOfScene(scene).mostM.at(-1) ?? 0;
}

/** @returns undefined where the lesson is not about a gap, or something else is touched though the gap is wide enough */
export function swingSum(scene: Scene, contact: Contact | undefined): SwingSum | undefined {
  const gapM = gapOf(scene);
  if (gapM === undefined) return undefined;
  const swingM = gapNeededM(scene);
  const spareM = gapM - swingM;
  return contact && spareM > 0 ? undefined : { gapM, swingM, spareM };
}

/** All that the panel says about one vehicle in its scene. */
export interface Decision {
  readonly sum: SwingSum | undefined;
  readonly least: LeastGap | undefined;
  /** the painted line or kerb that a corner passes farthest */
  readonly over: OverLine | undefined;
  readonly mostSwingM: number;
  readonly level: Level;
}

/** As elsewhere in the window: a touch is barred; over a kerb, or less than the margin left, is a tight. */
export function decide(scene: Scene, contact: Contact | undefined, marginM: number): Decision {
  const sum = swingSum(scene, contact);
  const least = sum ? undefined : leastGapOf(scene);
  const spareM = sum?.spareM ?? least?.gapM ?? Number.POSITIVE_INFINITY;
  const over = overLines(scene).find(({ overM }) => overM >= LEAST_OVER_M);
  const level = contact ? 'barred' : over || spareM < marginM ? 'tight' : 'care';
  return { sum, least, over, mostSwingM: mostSwingM(scene), level };
}

/** What is touched first and when, or that nothing is. */
export function contactSentence(contact: Contact | undefined): string {
  if (!contact) return 'Nothing is touched.';
  return `After ${contact.travelM.toFixed(1)} m the ${contact.part} touches ${contact.fixture}.`;
}

/** The line that is passed farthest; nothing to say where none is. */
export function overSentence({ over }: Decision): string {
  if (!over) return '';
  const does = over.fixture.kind === 'lane line' ? 'crosses' : 'hangs over';
  return `The ${over.part} ${does} ${over.fixture.name} by ${cmText(over.overM, 'up')}.`;
}

/** How the strip that the swing covers is tinted when all of it is shown. */
export function toneOf({ decision }: { readonly decision: Decision | undefined }): 'free' | 'close' | 'over' {
  if (decision?.level === 'barred') return 'over';
  return decision?.level === 'tight' ? 'close' : 'free';
}
