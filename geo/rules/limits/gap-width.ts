import { taggedAccess } from '../../tags/access.ts';
import { barrierEffect } from '../../tags/barrier-node.ts';
import { limitClaims } from '../../tags/limits.ts';
import { isOwnWidth, mappedGap } from '../../tags/mapped-gap.ts';
import type { Draft } from '../finding.ts';
import { type Place, passedNodes } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import { roundMm } from './rounding.ts';
import { sayGapUnreadable, sayPerhapsTight, sayPerhapsTooNarrow } from './say-sizes.ts';

/**
 * Plain widths (`width`, `est_width`) mapped on gates, chokers and whatever else stands on the driven road. They may
 * be the gap or the thing, so they never bar: narrower than the vehicle is unknown, hardly wider is tight.
 */
export function gapWidths(input: RuleInput): Draft[] {
  return passedNodes(input.drive, input.roads).flatMap((place) => judgeNode(input, place) ?? []);
}

function judgeNode({ envelope, margins, units }: RuleInput, place: Place): Draft | undefined {
  const { tags } = place;
  const gap = mappedGap(tags);
  if (gap === undefined || hasFirmerWord(place)) return undefined;
  const { leastWidthM, mirrorsWidthM, bodyWidthM } = envelope;
  const draft = {
    subject: 'width' as const,
    kind: 'gap' as const,
    run: runOf(place),
    tags: { ...gap.what, [gap.key]: gap.text },
    aspect: gap.key,
  };
  const { reading } = gap;
  if (reading.kind !== 'value')
    return {
      ...draft,
      kind: reading.kind === 'not believed' ? 'not believed' : 'unreadable',
      level: 'unknown',
      wants: 'measure',
      ...sayGapUnreadable(gap, mirrorsWidthM),
    };
  if (isOwnWidth(tags, reading.value)) return undefined;
  const limit = { value: reading.value, unit: 'm' as const, asMapped: gap.text };
  const leastSpare = roundMm(reading.value - leastWidthM);
  const least = leastWidthM > bodyWidthM ? 'width over folded mirrors' : 'body width';
  if (leastSpare < 0)
    return {
      ...draft,
      level: 'unknown',
      wants: 'measure',
      limit,
      vehicle: { value: leastWidthM, unit: 'm', what: least },
      spare: leastSpare,
      ...sayPerhapsTooNarrow(
        gap,
        { limitM: reading.value, vehicleM: leastWidthM, spareM: leastSpare, units },
        least,
      ),
    };
  const spare = roundMm(reading.value - mirrorsWidthM);
  if (spare >= margins.physicalWidthM) return undefined;
  return {
    ...draft,
    level: 'tight',
    limit,
    vehicle: { value: mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
    spare,
    ...sayPerhapsTight(gap, { limitM: reading.value, vehicleM: mirrorsWidthM, spareM: spare, units }),
  };
}

/** A width limit at a barrier or a physical one is the gap; a barrier that is shut anyway bars by itself. */
function hasFirmerWord({ tags, forward }: Place): boolean {
  const kind = tags['barrier'];
  if (kind !== undefined && barrierEffect(kind) === 'shut' && taggedAccess({ tags, forward }) === undefined)
    return true;
  return limitClaims({ tags, forward }, ['width']).some(
    ({ binding, basis }) => binding === 'always' && (basis === 'physical' || kind !== undefined),
  );
}
