import { figuresOf, type NotedFigure, printFigure } from '../../notes/say-note.ts';
import { rankOf } from '../../report/level.ts';
import type { Level } from '../../report/report.ts';
import { judgeHeight } from '../limits/height.ts';
import type { Judged } from '../limits/limit-rule.ts';
import { judgePlate } from '../limits/mass.ts';
import { roundMm } from '../limits/rounding.ts';
import { judgeGap } from '../limits/width.ts';
import type { RuleInput } from '../rule.ts';
import type { NoteAsked } from './meets.ts';

/** One figure of a note where the drive passes it, and what it means for the vehicle. */
export interface FigureHeld extends NoteAsked {
  readonly figure: NotedFigure;
  /** undefined: the vehicle passes freely */
  readonly judged: Judged | undefined;
  readonly sum: Sum;
}

/** What a figure is held against. */
type Sum = Pick<Judged, 'vehicle' | 'spare'>;

/** Each figure of the notes met, held against the vehicle as a mapped one would be: sizes as gaps, masses as signs. */
export function holdFigures(input: RuleInput, met: readonly NoteAsked[]): FigureHeld[] {
  return met.flatMap((one) =>
    figuresOf(one.note).map((figure) => {
      const judged = judge(input, one, figure);
      return { ...one, figure, judged, sum: judged ?? freeSum(input, figure) };
    }),
  );
}

function judge(input: RuleInput, { run }: NoteAsked, { subject, value }: NotedFigure): Judged | undefined {
  switch (subject) {
    case 'height':
      return judgeHeight(input, 'physical', value);
    case 'width':
      return judgeGap(input, value);
    case 'mass':
      return judgePlate(input, { basis: 'legal', quantity: 'mass' }, value, run[0].place);
  }
}

function freeSum({ card, envelope }: RuleInput, { subject, value }: NotedFigure): Sum {
  switch (subject) {
    case 'height':
      return {
        vehicle: { value: card.heightM, unit: 'm', what: 'height as measured' },
        spare: roundMm(value - envelope.heightM),
      };
    case 'width':
      return {
        vehicle: { value: envelope.mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
        spare: roundMm(value - envelope.mirrorsWidthM),
      };
    case 'mass':
      return {
        vehicle: { value: card.grossKg, unit: 'kg', what: 'plated gross mass' },
        spare: value - card.grossKg,
      };
  }
}

/** What a finding tells of a figure: its level, folded where the vehicle passes freely, and the sum. */
export function figureTold({ figure, judged, sum, note }: FigureHeld) {
  const unit = figure.subject === 'mass' ? ('kg' as const) : ('m' as const);
  return {
    level: judged?.level ?? ('care' as const),
    folded: judged === undefined,
    limit: { value: figure.value, unit, asMapped: `${printFigure(figure)} (measured)` },
    vehicle: sum.vehicle,
    spare: sum.spare,
    note: note.id,
  };
}

/** Whether a figure means worse than a level. */
export function isWorse({ judged }: FigureHeld, level: Level): boolean {
  return judged !== undefined && rankOf(judged.level) < rankOf(level);
}

/** The lowest of several figures of one quantity. */
export function lowest(figures: readonly FigureHeld[]): FigureHeld | undefined {
  return figures.reduce<FigureHeld | undefined>(
    (low, one) => (low === undefined || one.figure.value < low.figure.value ? one : low),
    undefined,
  );
}
