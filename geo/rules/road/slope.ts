import type { KindOf } from '../../report/kinds.ts';
import { directionOf } from '../../tags/driven.ts';
import { drivenIncline, type Incline, readIncline } from '../../tags/incline.ts';
import { pick } from '../../tags/pick.ts';
import { textOf } from '../../tags/text-of.ts';
import type { Units } from '../../units/in-units.ts';
import type { Draft } from '../finding.ts';
import { drivenWays } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';
import { saySlope, saySlopeNoFigure } from './say-passage.ts';

/** Signed as steep. Per cent; common practice, no source. */
const STEEP = 10;
/** Shorter level pieces do not end a hill. Metres. */
const GAP_M = 100;

/** A driven way with what is mapped of its slope, up as driven. */
export interface SlopePiece extends Piece {
  readonly incline: Incline;
}

/** Steep inclines, up and down as driven. */
export const slope: SubjectRule = (input) =>
  joinRuns(slopesOn(input).filter(isWorthAWord), GAP_M, aspectOf).map((run) => draftOf(run, input.units));

/** Every driven way that says something of its slope. */
export function slopesOn(input: RuleInput): SlopePiece[] {
  return drivenWays(input.drive, input.roads).flatMap((place) => {
    const text = place.tags['incline'];
    if (text === undefined) return [];
    return [{ ...wholeOf(place), incline: drivenIncline(readIncline(text), directionOf(place)) }];
  });
}

/** Per cent, up as driven; 0 where no figure is mapped. */
function percentOf({ incline }: SlopePiece): number {
  return incline.kind === 'percent' ? incline.percent : 0;
}

function isWorthAWord(piece: SlopePiece): boolean {
  return piece.incline.kind !== 'percent' || Math.abs(percentOf(piece)) >= STEEP;
}

function aspectOf({ incline }: SlopePiece): string {
  if (incline.kind !== 'percent') return incline.kind;
  return incline.percent > 0 ? 'climb' : 'fall';
}

function kindOf(incline: Incline): KindOf<'slope'> {
  if (incline.kind !== 'percent') return 'no figure';
  return incline.percent > 0 ? 'climb' : 'descent';
}

function draftOf(run: Run<SlopePiece>, units: Units): Draft {
  const [first] = run;
  const lengthM = coveredM(run);
  const draft = {
    subject: 'slope' as const,
    kind: kindOf(first.incline),
    level: 'care' as const,
    run,
    again: 'folded' as const,
    aspect: aspectOf(first),
  };
  if (first.incline.kind === 'percent') {
    const worst = run.reduce((a, b) => (Math.abs(percentOf(b)) > Math.abs(percentOf(a)) ? b : a));
    const percent = percentOf(worst);
    const asMapped = textOf(worst.place.tags, 'incline');
    return {
      ...draft,
      tags: { incline: asMapped },
      limit: { value: Math.round(percent * 10) / 10, unit: '%', asMapped },
      ...saySlope(percent, {
        units,
        lengthM,
        several: run.length > 1,
        turned: worst.place.forward ? undefined : asMapped,
      }),
    };
  }
  const { kind } = first.incline;
  return {
    ...draft,
    tags: pick(first.place.tags, ['incline']),
    ...(kind === 'not believed' ? { level: 'unknown' as const, wants: 'sign' as const } : {}),
    folded: kind !== 'steep' && kind !== 'not believed',
    ...saySlopeNoFigure(kind, { lengthM, text: textOf(first.place.tags, 'incline'), units }),
  };
}
