import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { axleShare } from '../../../geo/load/weigh/axle-loads.ts';
import { bareKg } from '../../../geo/load/weigh/say-plates.ts';
import { drawnSizeIn } from '../../../geo/units/in-units.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { settings } from '../../state/kept.ts';
import { useDrawn } from '../state/use-drawn.ts';
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
  const { units } = settings.value;
  const lines = useDrawn(items, Object.is, [card, fit, units], (item, index) => (
    <Line key={String(index)} item={item} card={card} fit={fit} />
  ));
  return (
    <div class={CLASS[fit]}>
      <p class="load-sheet-head">
        <span>Aboard, how far behind {fit === 'easy' ? 'the ' : ''}front axle</span>
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
      {lines}
    </div>
  );
}

function Line({ item, card, fit }: Pick<Props, 'card' | 'fit'> & { item: LoadItem }) {
  const frontKg = Math.round(axleShare(item, card.wheelbaseM).frontKg);
  return (
    <p>
      <span>
        <bdi>{clip(item.name, fit === 'longest' ? 26 : 60)}</bdi>
        <i>
          {' '}
          {item.place === undefined || fit !== 'easy' ? '' : `${clip(item.place, 30)}, `}
          {drawnSizeIn(settings.value.units, item.xM, 'nearest')}
        </i>
      </span>
      <span>{bareKg(item.massKg)}</span>
      <span>{bareKg(frontKg)}</span>
      <span>{bareKg(Math.round(item.massKg) - frontKg)}</span>
    </p>
  );
}
