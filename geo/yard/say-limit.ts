import type { Finding } from '../report/finding.ts';
import { sizeIn, type Units } from '../units/in-units.ts';
import { printKg } from '../units/print.ts';
import { clip } from '../units/text.ts';

/** A tag may hold anything. */
const LONGEST = 40;

/** A limit with its unit, rounded against the driver, the sign's own text behind it where that is another: `2.89 m, mapped as 9'6"`. */
export function sayLimit({ value, unit, asMapped }: NonNullable<Finding['limit']>, units: Units): string {
  const figure = figureOf(value, unit, units);
  const plain = clip(asMapped.trim(), LONGEST);
  const isSame = plain === '' || figure.includes(plain) || Number(plain) === value;
  return isSame ? figure : `${figure}, mapped as ${plain}`;
}

function figureOf(value: number, unit: NonNullable<Finding['limit']>['unit'], units: Units): string {
  switch (unit) {
    case 'm':
      return sizeIn(units, value, 'down');
    case 'kg':
      return printKg(value, 'down');
    case 'deg':
      return `${value.toFixed(1)}°`;
    case '%':
      return `${value.toFixed(0)} %`;
  }
}
