import { LEVEL_WORD, type Verdict } from '../../../geo/report/level.ts';
import { STANDING_CAUTION } from '../../../geo/report/standing-caution.ts';
import { clip, counted } from '../../../geo/units/text.ts';
import { wrap } from '../wrap.ts';

/** A pair that was handed over, as it is told. */
export interface Handed {
  readonly drive: string;
  readonly vehicle: string;
  readonly folder: string;
  readonly number: string;
  readonly replaces?: string;
  readonly verdict: Verdict;
  /** that its load is over a plate, and by how much */
  readonly over?: string;
}

/** 1 where one of them is barred or over a plate as loaded, else 0. */
export function exitForAll(handed: readonly Handed[]): 0 | 1 {
  return handed.some(({ verdict, over }) => verdict === 'barred' || over !== undefined) ? 1 : 0;
}

/** Pairs that were handed over, a line each, and what is not to be driven. */
export function sayHanded(handed: readonly Handed[], outFolder: string, width: number): string {
  const barred = handed.filter(({ verdict }) => verdict === 'barred');
  const over = handed.filter((each) => each.over !== undefined);
  const lines = [
    handed.length === 0
      ? 'Nothing was handed over.'
      : `${counted(handed.length, 'drive')} handed over into ${outFolder}, a folder each:`,
    ...handed.flatMap(({ folder, number, verdict, replaces, over: load }) => [
      `${number}  ${LEVEL_WORD[verdict].toUpperCase()}  ${clip(folder, 200)}${replaces === undefined ? '' : ` (takes the place of ${replaces})`}`,
      ...(load === undefined ? [] : [load]),
    ]),
    ...(barred.length === 0
      ? []
      : [`Do not drive: ${barred.length} of these ${barred.length === 1 ? 'is' : 'are'} barred.`]),
    ...(over.length === 0
      ? []
      : [
          `Do not leave as loaded: ${over.length} of these ${over.length === 1 ? 'is' : 'are'} over a plate.`,
        ]),
    ...(handed.length === 0 ? [] : [STANDING_CAUTION]),
  ];
  return `${lines.flatMap((line) => wrap(line, width)).join('\n')}\n`;
}
