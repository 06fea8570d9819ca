import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { axleShare } from '../../../geo/load/weigh/axle-loads.ts';
import { bareKg } from '../../../geo/load/weigh/say-plates.ts';
import { sizeIn } from '../../../geo/units/in-units.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { settings } from '../../state/kept.ts';
import type { Fit } from './fit.ts';

const CLASS: Readonly<Record<Fit, string>> = {
  easy: 'load-sheet-items',
  long: 'load-sheet-items load-sheet-items-long',
  longest: 'load-sheet-items load-sheet-items-long load-sheet-items-longest',
};

interface Props {
  readonly card: VehicleCard;
  readonly items: readonly LoadItem[];
  readonly fit: Fit;
}

/** Everything aboard with what it puts on each axle; in two columns where it is much. */
export function SheetItems({ card, items, fit }: Props) {
  const empty = card.runningOrder;
  return (
    <div class={CLASS[fit]}>
      <p class="load-sheet-head">
        <span>Aboard, metres behind {fit === 'easy' ? 'the ' : ''}front axle</span>
        <span>kg</span>
        <span>front</span>
        <span>rear</span>
      </p>
      {empty && (
        <p>
          <span>Empty, ready to drive</span>
          <span>{bareKg(empty.frontKg + empty.rearKg)}</span>
          <span>{bareKg(empty.frontKg)}</span>
          <span>{bareKg(empty.rearKg)}</span>
        </p>
      )}
      {items.map((item, i) => (
        <Line key={String(i)} item={item} card={card} fit={fit} />
      ))}
    </div>
  );
}

function Line({ item, card, fit }: Pick<Props, 'card' | 'fit'> & { item: LoadItem }) {
  const share = axleShare(item, card.wheelbaseM);
  return (
    <p>
      <span>
        <bdi>{clip(item.name, fit === 'easy' ? 60 : 26)}</bdi>
        <i>
          {' '}
          {item.place === undefined || fit !== 'easy' ? '' : `${clip(item.place, 30)}, `}
          {sizeIn(settings.value.units, item.xM, 'nearest')}
        </i>
      </span>
      <span>{bareKg(item.massKg)}</span>
      <span>{bareKg(share.frontKg)}</span>
      <span>{bareKg(share.rearKg)}</span>
    </p>
  );
}
