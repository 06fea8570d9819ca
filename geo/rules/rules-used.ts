import type { Source } from '../country/cited.ts';
import { alpha2 } from '../country/country-of.ts';
import type { CountryRule } from '../country/rule.ts';
import { sayGoodsSigns, sayKerbs, sayLegalHeight, sayMassSign, sayWidthSign } from '../country/say-rule.ts';
import { roofOver } from '../drive/above/lies-above.ts';
import type { LegSpeed, Timetable } from '../drive/times/timetable.ts';
import { given } from '../given.ts';
import type { DriveReport } from '../report/report.ts';
import { goodsAccess } from '../tags/access.ts';
import type { Quantity } from '../tags/limit-key.ts';
import { GOODS_SIGNS_FROM_KG } from '../tags/modes.ts';
import { cornersOf } from './corners/corners-of.ts';
import { claimsAt, drivenWays, limitedPlaces, type Place } from './places.ts';
import type { RuleInput } from './rule.ts';

export type RuleUsed = NonNullable<DriveReport['rules']>[number];

const ALL: readonly Quantity[] = ['height', 'width', 'mass', 'plateMass', 'axle'];
/**
 * The rows of the country table that something on this drive asked for, whether they let the vehicle by or not, each
 * once per country, with its source.
 */
export function rulesUsed(input: RuleInput, times: Timetable): RuleUsed[] {
  const used = new Map<string, RuleUsed>();
  const note: Note = (m, about, says, { source, note: more }) => {
    const code = input.along.countryAt(m);
    const key = `${code} ${about}`;
    if (used.has(key)) return;
    const country = code === undefined ? undefined : alpha2(code);
    const { text, trust } = source;
    used.set(key, {
      ...given({ country }),
      about,
      says: more ? `${says} ${more}` : says,
      source: text,
      trust,
    });
  };
  for (const place of limitedPlaces(input.drive, input.roads)) noteLimits(input, place, note);
  if (input.envelope.grossKg > GOODS_SIGNS_FROM_KG)
    for (const place of drivenWays(input.drive, input.roads))
      if (goodsAccess(place).length > 0) noteGoods(input.along.ruleAt(place.fromM), place, note);
  noteCorners(input, note);
  for (const speed of times.speeds) noteSpeed(speed, note);
  return [...used.values()];
}

type Note = (
  m: number,
  about: string,
  says: string,
  from: { readonly source: Source; readonly note?: string },
) => void;

function noteLimits(input: RuleInput, place: Place, note: Note): void {
  const rule = input.along.ruleAt(place.fromM);
  const { fromM } = place;
  for (const { quantity, basis, reading, binding } of claimsAt(place, ALL)) {
    if (binding === 'goods') {
      if (input.envelope.grossKg > GOODS_SIGNS_FROM_KG) noteGoods(rule, place, note);
    } else if (quantity === 'width' && basis === 'legal')
      note(fromM, 'width signs', sayWidthSign(rule), rule.widthSign);
    else if (quantity === 'mass') note(fromM, 'mass signs', sayMassSign(rule), rule.massSign);
    else if (quantity === 'height') {
      // under a roof any word in place of a height stands or falls with what an unsigned road promises
      if (reading.kind === 'unsigned' || (isWord(reading.kind) && roofOver(place.tags) !== undefined))
        note(fromM, 'roads without a height sign', rule.unsignedHeight.value.meaning, rule.unsignedHeight);
      if (reading.kind !== 'default') continue;
      note(fromM, 'legal height', sayLegalHeight(rule), rule.legalHeightM);
    }
  }
}

function isWord(kind: string): boolean {
  return kind === 'none' || kind === 'default';
}

function noteGoods(rule: CountryRule, place: Place, note: Note): void {
  note(place.fromM, 'signs for goods vehicles', sayGoodsSigns(rule), rule.goodsSigns);
}

/** What stood in for widths and kerbs that nobody mapped. */
function noteCorners(input: RuleInput, note: Note): void {
  for (const { measured } of cornersOf(input)) {
    const { turn, driven } = measured;
    const rule = input.along.ruleAt(driven.atM);
    if (turn.entry.from === 'default' || turn.exit.from === 'default')
      note(
        driven.atM,
        'widths of roads at corners',
        'Where none is mapped, the usual width of the class of road stands in.',
        rule.widths,
      );
    if (turn.circleM === undefined && turn.bendRadiusM === undefined)
      note(driven.atM, 'kerbs at corners', sayKerbs(rule), rule.kerbRadiusM);
  }
}

function noteSpeed({ fromM, toM, general, why }: LegSpeed, note: Note): void {
  if (general !== undefined) note((fromM + toM) / 2, `speed (${general.what})`, `${why.law}.`, general);
}
