import type { Strip } from '../strip.ts';

/** A stretch under one name and number. */
interface NamedStretch {
  /** the fullest first; written is the first that has room */
  readonly texts: readonly string[];
  readonly fromM: number;
  readonly toM: number;
}

/** Consecutive pieces of one name and number as one stretch. */
export function namedStretches(pieces: Strip['pieces']): NamedStretch[] {
  const named: NamedStretch[] = [];
  for (const { name, ref, fromM, toM } of pieces) {
    const both = name !== undefined && ref !== undefined ? `${name} ${ref}` : undefined;
    const texts = [both, name, ref].filter((text) => text !== undefined);
    if (texts.length === 0) continue;
    const last = named.at(-1);
    if (last !== undefined && last.texts[0] === texts[0] && fromM - last.toM < 1)
      named[named.length - 1] = { ...last, toM };
    else named.push({ texts, fromM, toM });
  }
  return named;
}

const NAME_EVERY_PX = 420;
const CLEAR_PX = 8;

/** Where along a stretch its name is written: at even distances, clear of what is written there already. */
export function nameYs(topPx: number, bottomPx: number, textPx: number, taken: readonly number[]): number[] {
  const room = bottomPx - topPx;
  if (room < textPx) return [];
  const count = Math.max(1, Math.floor(room / NAME_EVERY_PX));
  const ys: number[] = [];
  for (let i = 0; i < count; i++) {
    const from = topPx + (i * room) / count + textPx / 2;
    const to = topPx + ((i + 1) * room) / count - textPx / 2;
    const middle = (from + to) / 2;
    for (const share of [0, -0.5, 0.5, -1, 1]) {
      const y = middle + (share * (to - from)) / 2;
      if (taken.some((each) => Math.abs(each - y) < textPx / 2 + CLEAR_PX)) continue;
      ys.push(y);
      break;
    }
  }
  return ys;
}
