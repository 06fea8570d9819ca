import { isBridge } from '../../drive/above/lies-above.ts';
import type { OverKind } from '../../drive/above/over-kind.ts';
import type { Tags } from '../../roads/roads.ts';
import { lengthIn, sizeIn, type Units } from '../../units/in-units.ts';
import { printLimitM, printSizeM } from '../../units/print.ts';
import type { Words } from '../words.ts';

/** What is over the road, in words. */

const OVER: Readonly<Record<OverKind, string>> = {
  railway: 'A railway bridge',
  gateway: 'A gateway',
  roof: 'A roof',
  pipe: 'A pipe or conveyor',
  aqueduct: 'A bridge carrying water',
  foot: 'A foot or cycle bridge',
  road: 'A road bridge',
  structure: 'A bridge',
  mainRoad: 'A bridge of a main road',
  building: 'A building',
  gantry: 'A gantry',
};

/** The same where nothing is tagged as a bridge, and the layers alone tell that it lies over. */
const OVER_BY_LAYER: Partial<Record<OverKind, string>> = {
  railway: 'A railway',
  foot: 'A foot or cycle way',
  road: 'A road',
  mainRoad: 'A main road',
};

/** A figure on what crosses over, which is not one of the road below. */
export type OwnFigure =
  | { readonly kind: 'underside'; readonly heightM: number; readonly text: string }
  /** `why` it is not believed; undefined: it cannot be read */
  | { readonly kind: 'unreadable underside'; readonly text: string; readonly why?: string }
  /** it carries a limit that may be meant for the road below */
  | { readonly kind: 'limit'; readonly key: string; readonly text: string };

/** What the vehicle needs, and what no sign promises here; undefined where nothing is known of that. Metres. */
export interface HeightFacts {
  readonly units: Units;
  readonly neededM: number;
  readonly unsignedM: number | undefined;
}

/** @param several more than one kind crosses there */
export function sayAbove(
  kind: OverKind,
  above: { readonly tags: Tags; readonly several: boolean; readonly figure: OwnFigure | undefined },
  facts: HeightFacts,
): Words {
  return {
    say: `${sayCrosses(kind, above)}; no height is mapped on this road.${sayOwnFigure(above.figure, isBridge(above.tags), facts.units)}`,
    advice: `Look out for a height sign before it; ${sayNeeded(facts)}`,
  };
}

function sayCrosses(
  kind: OverKind,
  { tags, several }: { readonly tags: Tags; readonly several: boolean },
): string {
  const name = tags['bridge:name'] ?? tags['name'] ?? tags['ref'];
  const byLayer = isBridge(tags) ? undefined : OVER_BY_LAYER[kind];
  const what = `${byLayer ?? OVER[kind]}${name === undefined ? '' : ` (${name})`}`;
  if (kind === 'building') return `${what} is drawn over the road`;
  const crosses = several
    ? `${what} and more beside it cross over the road`
    : `${what} crosses over the road`;
  return byLayer === undefined ? crosses : `${crosses}, by the layers mapped`;
}

function sayOwnFigure(figure: OwnFigure | undefined, bridge: boolean, units: Units): string {
  switch (figure?.kind) {
    case undefined:
      return '';
    case 'unreadable underside':
      return figure.why === undefined
        ? ` "min_height=${figure.text}" of its underside cannot be read.`
        : ` "min_height=${figure.text}": ${figure.why}.`;
    case 'underside':
      return ` Its underside is mapped at ${sizeIn(units, figure.heightM, 'down')} (min_height=${figure.text}).`;
    case 'limit':
      return ` ${bridge ? 'The bridge itself' : 'It'} carries "${figure.key}=${figure.text}", which may be meant for the road below.`;
  }
}

function sayNeeded({ neededM, unsignedM }: HeightFacts): string {
  const unsigned =
    unsignedM === undefined
      ? ''
      : ` A bridge without a sign over a public road here should leave at least ${printLimitM(unsignedM)}; a sign can be missing, so look.`;
  return `the vehicle needs ${printSizeM(neededM)}.${unsigned}`;
}

export function sayGateway(neededM: number): Words {
  return {
    say: 'The road runs through a gateway; no height or width is mapped there.',
    advice: `Look before you drive in; the vehicle needs ${printSizeM(neededM)} of height.`,
  };
}

/** What closes the road in from above along its length. */
export type Roof = 'covered road' | 'passage' | 'gallery' | 'tunnel';

const ROOF: Readonly<Record<Roof, string>> = {
  'covered road': 'A covered road',
  passage: 'A passage through a building',
  gallery: 'A gallery against avalanches',
  tunnel: 'A tunnel',
};

/** @param words tags that stand in place of a height */
export function sayRoof(
  roof: Roof,
  under: { readonly name: string | undefined; readonly lengthM: number; readonly words: Tags },
  facts: HeightFacts,
): Words {
  const name = under.name === undefined ? '' : ` (${under.name})`;
  return {
    say: `${ROOF[roof]}${name} of ${lengthIn(facts.units, under.lengthM)}; ${sayMissing(under.words)}.`,
    advice: `Look for the height before you drive in; ${sayNeeded(facts)}`,
  };
}

function sayMissing(words: Tags): string {
  const said = Object.entries(words).map(([key, text]) => `"${key}=${text}"`);
  return said.length === 0
    ? 'no height is mapped in it'
    : `${said.join(' and ')} ${said.length === 1 ? 'gives' : 'give'} no height for it`;
}

/** Wooded stretches shorter than their whole by so much are told with it. */
const BROKEN_UP = 1.3;

/** @param woodedM metres with trees, of a stretch of `wholeM` */
export function sayTrees(woodedM: number, wholeM: number, units: Units): Words {
  const of = wholeM > woodedM * BROKEN_UP ? ` of ${lengthIn(units, wholeM)}` : '';
  return {
    say: `Trees stand over or close to the road for ${lengthIn(units, woodedM)}${of}.`,
    advice:
      'Keep off the edge where branches hang low, and mind the roof when you pull aside to let others pass.',
  };
}

/** @param rules tags on dangerous goods; @param propane the country, where some of its tunnels bar it */
export function sayTunnel(
  lengthM: number,
  {
    gasKg,
    rules,
    propane,
    units,
  }: {
    readonly units: Units;
    readonly gasKg: number;
    readonly rules: Tags;
    readonly propane: { readonly someBarItIn: string } | 'mostly free';
  },
): Words {
  const mapped = Object.entries(rules).map(([key, value]) => `${key}=${value}`);
  const rule = mapped.length === 0 ? '' : ` with a rule on dangerous goods (${mapped.join(', ')})`;
  return {
    say: `A tunnel of ${lengthIn(units, lengthM)}${rule}; the vehicle carries ${gasKg} kg of gas.`,
    advice:
      propane !== 'mostly free'
        ? `Some tunnels in ${propane.someBarItIn} bar propane, or limit it: read the signs before the last exit, and shut the bottles.`
        : 'Rules on dangerous goods mostly leave a vehicle’s own gas alone. Shut the bottles; a sign or an operator may still ask more.',
  };
}
