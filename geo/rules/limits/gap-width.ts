import { taggedAccess } from '../../tags/access.ts';
import { barrierEffect } from '../../tags/barrier-node.ts';
import { limitClaims } from '../../tags/limits.ts';
import { isOwnWidth, mappedGap } from '../../tags/mapped-gap.ts';
import { printMetres, printSizeM } from '../../units/print.ts';
import type { Draft } from '../finding.ts';
import { type Place, passedNodes } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import { roundMm } from './round-mm.ts';

/**
 * Plain widths (`width`, `est_width`) mapped on gates, chokers and whatever else stands on the driven road. They may
 * be the gap or the thing, so they never bar: narrower than the vehicle is unknown, tight is a tight.
 */
export function gapWidths(input: RuleInput): Draft[] {
  return passedNodes(input.drive, input.roads).flatMap((place) => judgeNode(input, place));
}

function judgeNode(input: RuleInput, place: Place): Draft[] {
  const { tags } = place;
  const gap = mappedGap(tags);
  if (gap === undefined || hasFirmerWord(place)) return [];
  const { leastWidthM, mirrorsWidthM, bodyWidthM } = input.envelope;
  const mapped = `"${gap.key}=${gap.text}"${gap.key === 'est_width' ? ' (an estimate)' : ''} is mapped on ${gap.on}`;
  const draft = {
    subject: 'width' as const,
    kind: 'gap' as const,
    run: runOf(place),
    tags: { ...gap.what, [gap.key]: gap.text },
    aspect: gap.key,
  };
  const { reading } = gap;
  if (reading.kind !== 'value')
    return [
      {
        ...draft,
        kind: 'unreadable',
        level: 'unknown',
        say: `${mapped} and cannot be read.`,
        advice: `Look before you drive through; over the mirrors the vehicle is ${printSizeM(mirrorsWidthM)}.`,
      },
    ];
  if (isOwnWidth(tags, reading.value)) return [];
  const limit = { value: reading.value, unit: 'm' as const, asMapped: gap.text };
  const leastSpare = roundMm(reading.value - leastWidthM);
  const least = leastWidthM > bodyWidthM ? 'width over folded mirrors' : 'body width';
  if (leastSpare < 0)
    return [
      {
        ...draft,
        level: 'unknown',
        limit,
        vehicle: { value: leastWidthM, unit: 'm', what: least },
        spare: leastSpare,
        say: `${mapped}; the ${least} is ${printSizeM(leastWidthM)}: ${printMetres(-leastSpare, 'up')} too wide, if that is the gap.`,
        advice: 'Find out how wide the gap is, or take another road.',
      },
    ];
  const spare = roundMm(reading.value - mirrorsWidthM);
  if (spare >= input.margins.physicalWidthM) return [];
  return [
    {
      ...draft,
      level: 'tight',
      limit,
      vehicle: { value: mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
      spare,
      say: `${mapped}; over the mirrors the vehicle is ${printSizeM(mirrorsWidthM)}: ${spare < 0 ? `${printMetres(-spare, 'up')} more than that` : `${printMetres(spare, 'down')} spare in all`}.`,
      advice:
        spare < 0 ? 'Fold the mirrors and have someone walk ahead.' : 'Line up straight and go dead slow.',
    },
  ];
}

/** A width limit at a barrier or a physical one is the gap; a barrier that is shut anyway bars by itself. */
function hasFirmerWord({ tags, forward }: Place): boolean {
  const kind = tags['barrier'];
  if (kind !== undefined && barrierEffect(kind) === 'shut' && taggedAccess(tags, forward) === undefined)
    return true;
  return limitClaims(tags, ['width'], forward).some(
    ({ binding, basis }) => binding === 'always' && (basis === 'physical' || kind !== undefined),
  );
}
