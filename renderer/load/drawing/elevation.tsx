import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { drawnDriver } from '../../../geo/load/places/seats.ts';
import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { useDrawn } from '../state/use-drawn.ts';
import { Arm } from './arm.tsx';
import { BlockShape } from './block-shape.tsx';
import { Carried, carriedId } from './carried.tsx';
import { CentreOfMass } from './centre.tsx';
import { Flags } from './flags.tsx';
import { FLOOR_M, type Flag, type Layout } from './layout.ts';
import { type Block, frontToRear, shrinkToFit, stackItems } from './stack.ts';
import { TanksSide } from './tanks-side.tsx';
import { VehicleSide } from './vehicle-side.tsx';

interface Props {
  readonly card: VehicleCard;
  readonly items: readonly LoadItem[];
  readonly result: LoadFigures | undefined;
  readonly at: Layout;
  readonly flags: readonly Flag[];
}

/** The vehicle with everything aboard, for paper: nothing in it can be moved. */
export function StillElevation({ card, items, result, at, flags }: Props) {
  const shrunk = shrinkToFit(items, card, card.heightM - FLOOR_M);
  const driver = drawnDriver(card, items);
  const withDriver = driver ? [...items, driver] : items;
  return (
    <svg class="load-elevation" viewBox={`0 0 ${at.widthPx} ${at.heightPx}`} aria-hidden="true">
      <Flags flags={flags} card={card} at={at} taken={undefined} />
      <VehicleSide card={card} at={at}>
        <TanksSide card={card} items={items} at={at} />
      </VehicleSide>
      {result && <CentreOfMass card={card} result={result} at={at} />}
      {stackItems(withDriver, card, shrunk).map((block) => (
        <g key={block.index} class="load-item">
          <BlockShape block={block} at={at} />
        </g>
      ))}
    </svg>
  );
}

/**
 * The vehicle with everything aboard: each item can be carried along it.
 * @param asked what is asked about, drawn hollow on top of what is aboard
 * @param pointed the item whose arm is drawn
 * @param shrunk as the items lay before one was taken into the hand, so that none changes its size on the way
 */
export function Elevation({
  card,
  items,
  result,
  at,
  flags,
  asked,
  pointed,
  shrunk,
}: Props & {
  readonly asked: readonly LoadItem[];
  readonly pointed: LoadItem | undefined;
  readonly shrunk: number;
}) {
  const driver = drawnDriver(card, items);
  const blocks = stackItems([...items, ...asked, ...(driver ? [driver] : [])], card, shrunk);
  const driverAt = items.length + asked.length;
  const aboard = blocks.filter(({ index }) => index < items.length);
  const fromFront = [...aboard]
    .sort(frontToRear)
    .map(({ index }) => carriedId(index))
    .join(' ');
  const carried = useDrawn(aboard, isSameBlock, [card, at], (block) => (
    <Carried key={block.index} block={block} card={card} at={at} />
  ));
  return (
    // painted with what is in front last, told from front to rear
    <svg class="load-elevation" width={at.widthPx} height={at.heightPx} aria-owns={fromFront}>
      <title>What is aboard, from front to rear: draw an item along the vehicle to move it</title>
      <svg aria-hidden="true" width={at.widthPx} height={at.heightPx}>
        <Flags flags={flags} card={card} at={at} taken={pointed?.place} />
        <VehicleSide card={card} at={at}>
          <TanksSide card={card} items={items} at={at} />
        </VehicleSide>
        {result && <CentreOfMass card={card} result={result} at={at} />}
        {pointed && <Arm item={pointed} at={at} />}
        {blocks
          .filter(({ index }) => index >= items.length && index !== driverAt)
          .map((block) => (
            <g key={block.index} class="load-item load-item-asked">
              <BlockShape block={block} at={at} />
            </g>
          ))}
      </svg>
      {carried}
      {/* in front of who sits beside, and in nobody's way: the empty weight holds the driver */}
      <svg class="load-item-still" aria-hidden="true" width={at.widthPx} height={at.heightPx}>
        {blocks
          .filter(({ index }) => index === driverAt)
          .map((block) => (
            <g key="driver" class="load-item">
              <BlockShape block={block} at={at} />
            </g>
          ))}
      </svg>
    </svg>
  );
}

function isSameBlock(a: Block, b: Block): boolean {
  return (
    a.item === b.item &&
    a.index === b.index &&
    a.upM === b.upM &&
    a.wideM === b.wideM &&
    a.highM === b.highM &&
    a.row === b.row
  );
}
