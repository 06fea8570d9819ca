import { toRad } from '../earth/angles.ts';
import { isBelieved } from '../units/believed.ts';
import type { Direction } from './driven.ts';
/** What `incline` says of a way along its drawn order. Per cent of rise; `up` and `down` without a figure. */
export type Incline =
  | { readonly kind: 'percent'; readonly percent: number }
  | { readonly kind: 'up' | 'down' | 'steep' | 'some' }
  | { readonly kind: 'unreadable' | 'not believed' };

/**
 * Reads `10%`, `-8 %`, `4.3°`, `1:12`, a bare number (per cent), or a word.
 * @returns not believed for figures no road has, unreadable for any other text
 */
export function readIncline(text: string): Incline {
  const plain = text.trim().toLowerCase().replace(',', '.').replace('−', '-');
  if (plain === 'up' || plain === 'down' || plain === 'steep') return { kind: plain };
  if (plain === 'yes' || plain === 'up/down' || plain === 'variable') return { kind: 'some' };
  if (plain === 'no' || plain === 'none' || plain === 'level') return { kind: 'percent', percent: 0 };
  const ratio = /^(-?)1\s*(?::|in)\s*(\d+(?:\.\d+)?)$/.exec(plain);
  const figure = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+))\s*(%|°|deg)?$/.exec(plain);
  let percent = Number.NaN;
  if (ratio !== null) percent = ((ratio[1] === '-' ? -1 : 1) * 100) / Number(ratio[2]);
  else if (figure !== null) percent = toPercent(Number(figure[1]), figure[2]);
  if (!Number.isFinite(percent)) return { kind: 'unreadable' };
  return isBelieved('inclinePercent', percent) ? { kind: 'percent', percent } : { kind: 'not believed' };
}

function toPercent(value: number, unit: string | undefined): number {
  return unit === '°' || unit === 'deg' ? 100 * Math.tan(toRad(value)) : value;
}

/** The same incline as it is driven. */
export function drivenIncline(incline: Incline, driven: Direction): Incline {
  if (driven === 'forward') return incline;
  if (incline.kind === 'percent') return { kind: 'percent', percent: 0 - incline.percent };
  if (incline.kind === 'up') return { kind: 'down' };
  return incline.kind === 'down' ? { kind: 'up' } : incline;
}
