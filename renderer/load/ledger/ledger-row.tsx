import { liquidOf } from '../../../geo/load/list/item-kind.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { kgField, readItemKg, readX, xField } from '../../../geo/load/list/read-entries.ts';
import { putAt } from '../../../geo/load/places/spots.ts';
import { axleShare } from '../../../geo/load/weigh/axle-loads.ts';
import { bareKg, kgText, sayWhere } from '../../../geo/load/weigh/say-plates.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { LIQUID_FACTS } from '../../../geo/vehicle/liquids.ts';
import { clip } from '../../drive/words.ts';
import { PlaceChoice } from '../fields/place-choice.tsx';
import { useTyped } from '../fields/use-typed.ts';
import { focusNear } from '../state/keep-focus.ts';
import { endStep, pointedAt, remove, replace } from '../state/state.ts';

/** One item's line: what, how much, where, and what it puts on each axle. */
export function LedgerRow({ item, index, card }: { item: LoadItem; index: number; card: VehicleCard }) {
  const share = axleShare(item, card.wheelbaseM);
  const called = clip(item.name, 60);
  const kg = useTyped(item.massKg, kgField, readItemKg, (massKg) =>
    replace(index, weighing(item, massKg), `${called}: ${kgText(massKg)}`, `kg ${index}`),
  );
  const x = useTyped(item.xM, xField, readX, (xM) => {
    const to = putAt(item, card, xM, 0.004);
    replace(index, { ...to, xM }, `moved ${called} to ${sayWhere(to)}`, `x ${index}`);
  });
  const fault = kg.fault ?? x.fault;
  return (
    <>
      <tr
        class={pointedAt.value === index ? 'load-row load-row-pointed' : 'load-row'}
        onFocusIn={() => {
          pointedAt.value = index;
        }}
      >
        <th scope="row">
          <input
            aria-label={`Name of item ${index + 1}`}
            value={item.name}
            maxLength={200}
            autoComplete="off"
            onInput={({ currentTarget }) => {
              const name = currentTarget.value;
              // a blank name would be no item; it comes back when the field is left
              if (name.trim() !== '') replace(index, { ...item, name }, `renamed ${called}`, `name ${index}`);
            }}
            onBlur={({ currentTarget }) => {
              currentTarget.value = item.name;
              endStep();
            }}
          />
        </th>
        <td>
          <input id={`load-kg-${index}`} aria-label={`Kilograms of ${called}`} {...kg.field} />
        </td>
        <td>
          <PlaceChoice
            label={`Place of ${called}`}
            item={item}
            card={card}
            put={(to) => replace(index, to, `moved ${called} to ${sayWhere(to)}`)}
          />
        </td>
        <td>
          <input aria-label={`Metres behind the front axle of ${called}`} {...x.field} />
        </td>
        <td class="load-figure">{bareKg(share.frontKg)}</td>
        <td class="load-figure">{bareKg(share.rearKg)}</td>
        <td>
          <button
            type="button"
            class="quiet"
            id={`load-remove-${index}`}
            aria-label={`Take off ${called}`}
            onClick={() => {
              remove(index);
              focusNear(index, 'load-remove');
            }}
          >
            Take off
          </button>
        </td>
      </tr>
      {fault !== undefined && (
        <tr class="load-fault">
          <td colSpan={7}>
            <span role="alert">{fault} Until then the figure before counts.</span>
          </td>
        </tr>
      )}
    </>
  );
}

/** Another mass: of a liquid the litres follow. */
function weighing(item: LoadItem, massKg: number): LoadItem {
  const { litres, ...rest } = item;
  const liquid = liquidOf(item);
  if (litres === undefined || liquid === undefined || massKg <= 0) return { ...rest, massKg };
  return { ...rest, massKg, litres: Math.round((massKg / LIQUID_FACTS[liquid].kgPerL) * 10) / 10 };
}
