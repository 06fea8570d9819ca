import { alpha2 } from '../country/country-of.ts';
import type { CountryRule } from '../country/rule.ts';
import { roofOver } from '../drive/above/lies-above.ts';
import type { LegSpeed, Timetable } from '../drive/times/timetable.ts';
import type { DriveReport } from '../report/report.ts';
import { goodsAccess } from '../tags/access.ts';
import type { Quantity } from '../tags/limit-key.ts';
import { limitClaims } from '../tags/limits.ts';
import { GOODS_SIGNS_FROM_KG } from '../tags/modes.ts';
import { printMetres } from '../units/print.ts';
import { cornersOf } from './corners/corners-of.ts';
import { drivenWays, limitedPlaces, type Place } from './places.ts';
import type { RuleInput } from './rule.ts';

export type RuleUsed = NonNullable<DriveReport['rules']>[number];

const ALL: readonly Quantity[] = ['height', 'width', 'mass', 'plateMass', 'axle'];
const WIDTH_SAYS = {
  body: 'A width sign is held against the body.',
  'with mirrors': 'A width sign counts the mirrors as driven.',
};
const MASS_SAYS = {
  plated: 'The plain mass sign is about the plated mass.',
  actual: 'The plain mass sign is about the mass on the day; the plate is tested all the same.',
};
const GOODS_SAYS = {
  bind: 'Signs for goods vehicles bind a motorhome over 3.5 t.',
  'do not bind': 'Signs for goods vehicles leave a motorhome over 3.5 t alone.',
  'not known': 'Whether signs for goods vehicles bind a motorhome over 3.5 t is not known.',
};

/**
 * The rows of the country table that something on this drive asked for, whether they let the vehicle by or not, each
 * once per country, with its source.
 */
export function rulesUsed(input: RuleInput, times: Timetable): RuleUsed[] {
  const used = new Map<string, RuleUsed>();
  const note = (m: number, about: string, says: string, source: string, more: string | undefined) => {
    const code = input.along.countryAt(m);
    const country = code === undefined ? {} : { country: alpha2(code) };
    const key = `${code} ${about}`;
    if (!used.has(key)) used.set(key, { ...country, about, says: more ? `${says} ${more}` : says, source });
  };
  for (const place of limitedPlaces(input.drive, input.roads)) noteLimits(input, place, note);
  if (input.envelope.grossKg > GOODS_SIGNS_FROM_KG)
    for (const place of drivenWays(input.drive, input.roads))
      if (goodsAccess(place.tags, place.forward).length > 0)
        noteGoods(input.along.ruleAt(place.fromM), place, note);
  noteCorners(input, note);
  for (const speed of times.speeds) noteSpeed(speed, note);
  return [...used.values()];
}

type Note = (m: number, about: string, says: string, source: string, more?: string) => void;

function noteLimits(input: RuleInput, place: Place, note: Note): void {
  const rule = input.along.ruleAt(place.fromM);
  const { fromM } = place;
  for (const { quantity, basis, reading, binding } of limitClaims(place.tags, ALL, place.forward)) {
    if (binding === 'goods') {
      if (input.envelope.grossKg > GOODS_SIGNS_FROM_KG) noteGoods(rule, place, note);
    } else if (quantity === 'width' && basis === 'legal')
      note(
        fromM,
        'width signs',
        WIDTH_SAYS[rule.widthSign.value],
        rule.widthSign.source,
        rule.widthSign.note,
      );
    else if (quantity === 'mass')
      note(fromM, 'mass signs', MASS_SAYS[rule.massSign.value], rule.massSign.source);
    else if (quantity === 'height') {
      // under a roof any word in place of a height stands or falls with what an unsigned road promises
      if (reading.kind === 'unsigned' || (isWord(reading.kind) && roofOver(place.tags) !== undefined))
        note(
          fromM,
          'roads without a height sign',
          rule.unsignedHeight.value.meaning,
          rule.unsignedHeight.source,
        );
      if (reading.kind !== 'default') continue;
      const { value, source, note: more } = rule.legalHeightM;
      const says = value === undefined ? 'No legal height.' : `The legal height is ${printMetres(value)}.`;
      note(fromM, 'legal height', says, source, more);
    }
  }
}

function isWord(kind: string): boolean {
  return kind === 'none' || kind === 'default';
}

function noteGoods({ goodsSigns }: CountryRule, place: Place, note: Note): void {
  note(
    place.fromM,
    'signs for goods vehicles',
    GOODS_SAYS[goodsSigns.value],
    goodsSigns.source,
    goodsSigns.note,
  );
}

/** What stood in for widths and kerbs that nobody mapped. */
function noteCorners(input: RuleInput, note: Note): void {
  for (const { measured } of cornersOf(input)) {
    const { turn, driven } = measured;
    const { widths, kerbRadiusM } = input.along.ruleAt(driven.atM);
    if (turn.entry.from === 'default' || turn.exit.from === 'default')
      note(
        driven.atM,
        'widths of roads at corners',
        'Where none is mapped, the usual width of the class of road stands in.',
        widths.source,
        widths.note,
      );
    const { urban, rural } = kerbRadiusM.value;
    const says = `The kerb at a corner is taken to have a radius of ${urban} m in towns, ${rural} m outside.`;
    if (turn.circleM === undefined && turn.bendRadiusM === undefined)
      note(driven.atM, 'kerbs at corners', says, kerbRadiusM.source, kerbRadiusM.note);
  }
}

function noteSpeed({ fromM, toM, source, mapped, why }: LegSpeed, note: Note): void {
  if (mapped || source === 'as mapped') return;
  note((fromM + toM) / 2, `speed (${why.because})`, `${why.law}.`, source);
}
