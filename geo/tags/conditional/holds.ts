import { type HoursAnswer, hoursHold, UNREADABLE_HOURS } from '../../clock/hours.ts';
import { hoursText } from '../../clock/hours-text.ts';
import { assertNever } from '../../result.ts';
import type { Comparison, Part, Property } from './conditional.ts';
import type { ConditionContext } from './context.ts';
import { GOING_THERE, GOODS, IS_MOTORHOME, PERHAPS_MOTORHOME } from './words.ts';

/** Whether a condition holds; `unknown` says why in words for the user. */
export type Answer = HoursAnswer;

const YES: Answer = { is: 'yes' };
const NO: Answer = { is: 'no' };
const unknown = (why: string): Answer => ({ is: 'unknown', why });

const PROPERTY_NAMES: Readonly<Record<Property, string>> = {
  weight: 'mass',
  weightrating: 'plated mass',
  axleload: 'axle load',
  emptyweight: 'unladen mass',
  length: 'length',
  height: 'height',
  width: 'width',
  axles: 'number of axles',
};

/** Binary fractions make 7'6" a hair more than 2.286 m; a tenth of a millimetre or gram is no difference. */
const SAME = 1e-4;

function compares(figure: number, is: Comparison, other: number): boolean {
  const equal = Math.abs(figure - other) <= SAME;
  switch (is) {
    case '=':
      return equal;
    case '<':
      return figure < other && !equal;
    case '>':
      return figure > other && !equal;
    case '<=':
      return figure < other || equal;
    case '>=':
      return figure > other || equal;
    default:
      return assertNever(is);
  }
}

function purposeHolds(word: string, text: string, { reach }: ConditionContext): Answer {
  if (reach === 'through') return NO;
  if (reach === 'within' && GOING_THERE.has(word)) return YES;
  return unknown(
    reach === undefined
      ? `it depends on whether the drive goes there (${text})`
      : `it depends on what brings the vehicle there (${text})`,
  );
}

function vehicleHolds(word: string, text: string, { goodsSigns }: ConditionContext): Answer {
  if (IS_MOTORHOME.has(word)) return YES;
  if (PERHAPS_MOTORHOME.has(word)) return unknown(`a motorhome may or may not count there (${text})`);
  if (!GOODS.has(word) || goodsSigns === undefined) return NO;
  return goodsSigns === 'bind'
    ? YES
    : unknown(`signs for goods vehicles may bind this vehicle there (${text})`);
}

function hoursPartHolds(text: string, { moment, place }: ConditionContext): Answer {
  if (moment === undefined) return unknown(`it depends on the time of passing (${hoursText(text)})`);
  const answer = hoursHold(text, moment, place);
  if (answer.is !== 'unknown') return answer;
  // half-translated free text would be neither the map's words nor ours
  return unknown(`${answer.why} (${answer === UNREADABLE_HOURS ? text : hoursText(text)})`);
}

function hazmatHolds(text: string, { vehicle }: ConditionContext): Answer {
  return vehicle.gasKg === 0 ? NO : unknown(`gas bottles may count as dangerous goods there (${text})`);
}

function reasons(answers: readonly Answer[]): string {
  return [...new Set(answers.flatMap((answer) => (answer.is === 'unknown' ? [answer.why] : [])))].join('; ');
}

function allHold(answers: readonly Answer[]): Answer {
  if (answers.some((answer) => answer.is === 'no')) return NO;
  return answers.some((answer) => answer.is === 'unknown') ? unknown(reasons(answers)) : YES;
}

function anyHolds(answers: readonly Answer[]): Answer {
  if (answers.some((answer) => answer.is === 'yes')) return YES;
  return answers.some((answer) => answer.is === 'unknown') ? unknown(reasons(answers)) : NO;
}

function partHolds(part: Part, context: ConditionContext): Answer {
  const each = (of: readonly Part[]) => of.map((inner) => partHolds(inner, context));
  switch (part.kind) {
    case 'compare': {
      const figure = context.vehicle[part.property];
      if (figure === undefined)
        return unknown(`the vehicle card gives no ${PROPERTY_NAMES[part.property]} (${part.text})`);
      return compares(figure, part.is, part.figure) ? YES : NO;
    }
    case 'hours':
      return hoursPartHolds(part.text, context);
    case 'purpose':
      return purposeHolds(part.word, part.text, context);
    case 'vehicle':
      return vehicleHolds(part.word, part.text, context);
    case 'circumstance':
      return unknown(`it depends on the conditions on the day (${part.text})`);
    case 'hazmat':
      return hazmatHolds(part.text, context);
    case 'all':
      return allHold(each(part.of));
    case 'any':
      return anyHolds(each(part.of));
    case 'all-or-any': {
      const answers = each(part.of);
      const [all, any] = [allHold(answers), anyHolds(answers)];
      return all.is === any.is ? all : unknown(`“${part.text}” can be read in two ways`);
    }
    case 'unknown':
      return unknown(`“${part.text}” is not understood`);
    default:
      return assertNever(part);
  }
}

/** Whether all parts of a condition hold for this vehicle, there and then. */
export function conditionHolds(parts: readonly Part[], context: ConditionContext): Answer {
  return allHold(parts.map((part) => partHolds(part, context)));
}
