import { useComputed } from '@preact/signals';
import { ITEM_NAME_LONGEST } from '../../../geo/load/list/bounds.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { kgField, meantX, readItemKg, readX, xField } from '../../../geo/load/list/read-entries.ts';
import { withMass } from '../../../geo/load/list/with-mass.ts';
import { putExactly } from '../../../geo/load/places/spots.ts';
import { axleShare } from '../../../geo/load/weigh/axle-loads.ts';
import { bareKg, kgText, sayWhere } from '../../../geo/load/weigh/say-plates.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { MeantButtons } from '../../look/meant-buttons.tsx';
import { settings } from '../../state/kept.ts';
import { PlaceChoice } from '../fields/place-choice.tsx';
import { useTyped } from '../fields/use-typed.ts';
import { focusNear } from '../state/keep-focus.ts';
import { endStep, pointedAt, remove, replace } from '../state/state.ts';

interface Props {
  readonly item: LoadItem;
  /** its place in the list */
  readonly index: number;
}

/** One item's line: what, how much, where, and what it puts on each axle. */
export function LedgerRow({ item, index, card }: Props & { card: VehicleCard }) {
  const { units } = settings.value;
  const pointed = useComputed(() => pointedAt.value === index).value;
  const share = axleShare(item, card.wheelbaseM);
  const frontKg = Math.round(share.frontKg);
  const called = clip(item.name, 60);
  const move = (to: LoadItem, merging?: string) =>
    replace(index, to, `moved ${called} to ${sayWhere(to, units)}`, merging);
  const kg = useTyped(item.massKg, kgField, readItemKg, (massKg) =>
    replace(index, withMass(item, massKg), `${called}: ${kgText(massKg)}`, `kg ${index}`),
  );
  const x = useTyped(
    item.xM,
    (xM) => xField(xM, units),
    readX,
    (xM) => move(putExactly(item, card, xM), `x ${index}`),
    meantX,
  );
  const fault = kg.fault ?? x.fault;
  return (
    <>
      <tr
        class={pointed ? 'load-row load-row-pointed' : 'load-row'}
        onFocusIn={() => {
          pointedAt.value = index;
        }}
      >
        <th scope="row">
          <NameField item={item} index={index} />
        </th>
        <td>
          <input id={`load-kg-${index}`} aria-label={`Kilograms of ${called}`} {...kg.field} />
        </td>
        <td>
          <PlaceChoice label={`Place of ${called}`} item={item} card={card} put={move} />
        </td>
        <td>
          <input aria-label={`How far behind the front axle ${called} stands`} {...x.field} />
        </td>
        <td class="load-figure">{bareKg(frontKg)}</td>
        <td class="load-figure">{bareKg(Math.round(item.massKg) - frontKg)}</td>
        <td>
          <TakeOff item={item} index={index} />
        </td>
      </tr>
      {fault !== undefined && (
        <tr class="load-fault">
          <td colSpan={7}>
            <span role="alert">{fault} Until then the figure before counts.</span>{' '}
            <MeantButtons of={x.meant} take={x.takeMeant} />
          </td>
        </tr>
      )}
    </>
  );
}

function NameField({ item, index }: Props) {
  return (
    <input
      aria-label={`Name of item ${index + 1}`}
      value={item.name}
      maxLength={ITEM_NAME_LONGEST}
      autoComplete="off"
      onInput={({ currentTarget }) => {
        const name = currentTarget.value;
        // a blank name would be no item; it comes back when the field is left
        if (name.trim() !== '')
          replace(index, { ...item, name }, `renamed ${clip(item.name, 60)}`, `name ${index}`);
      }}
      onBlur={({ currentTarget }) => {
        currentTarget.value = item.name;
        endStep();
      }}
    />
  );
}

function TakeOff({ item, index }: Props) {
  return (
    <button
      type="button"
      class="quiet"
      id={`load-remove-${index}`}
      aria-label={`Take off ${clip(item.name, 60)}`}
      onClick={() => {
        remove(index);
        focusNear(index, 'load-remove');
      }}
    >
      Take off
    </button>
  );
}
