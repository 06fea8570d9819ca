import { useComputed } from '@preact/signals';
import { kgText, sayPlate, sayWhere } from '../../../geo/load/weigh/say-plates.ts';
import { decidingOf } from '../../../geo/load/weigh/sums.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { settings } from '../../state/kept.ts';
import { editRow } from '../state/keep-focus.ts';
import { held, pointedAt, weighed } from '../state/state.ts';
import { BlockShape } from './block-shape.tsx';
import type { Layout } from './layout.ts';
import type { Block } from './stack.ts';
import { useCarry } from './use-carry.ts';

/** Of the element that an item of the list is carried by. */
export function carriedId(index: number): string {
  return `load-item-${index}`;
}

/** An item that can be carried along the vehicle. */
export function Carried({ block, card, at }: { block: Block; card: VehicleCard; at: Layout }) {
  const { index, item } = block;
  const carry = useCarry(index, item, card, at, () => editRow(index));
  const inHand = useComputed(() => held.value?.index === index).value;
  const pointed = useComputed(() => pointedAt.value === index).value;
  // the plates are told of the one that is moved: all others would be drawn anew at every step
  const result = pointed && weighed.value?.ok ? weighed.value.value : undefined;
  return (
    <g
      class={`load-item${inHand ? ' load-item-held' : ''}${pointed ? ' load-item-pointed' : ''}`}
      id={carriedId(index)}
      role="slider"
      tabIndex={0}
      aria-label={`${clip(item.name, 80)}, ${kgText(item.massKg)}`}
      aria-valuemin={Math.round(at.noseM * 100)}
      aria-valuemax={Math.round(at.endM * 100)}
      aria-valuenow={Math.round(item.xM * 100)}
      aria-valuetext={`${sayWhere(item, settings.value.units)}${result ? `; ${sayPlate(decidingOf(result))}` : ''}`}
      {...carry}
    >
      <title>{`${clip(item.name, 80)}, ${kgText(item.massKg)}, ${sayWhere(item, settings.value.units)}`}</title>
      <BlockShape block={block} at={at} />
    </g>
  );
}
