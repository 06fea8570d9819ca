import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import { bareKg } from '../../../geo/load/weigh/say-plates.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { sayEmptyWeight } from '../../../geo/vehicle/say-empty-weight.ts';
import { settings } from '../../state/kept.ts';
import { useDrawn } from '../state/use-drawn.ts';
import { LedgerRow } from './ledger-row.tsx';

/** Everything that weighs, line by line from the empty weight to the spare: it can be changed where it stands. */
export function Ledger({
  card,
  items,
  result,
}: {
  card: VehicleCard;
  items: readonly LoadItem[];
  result: LoadFigures | undefined;
}) {
  const empty = card.runningOrder;
  const { units } = settings.value;
  // an item has no name of its own that lasts: its place in the list is what it is known by
  const rows = useDrawn(items, Object.is, [card, units], (item, index) => (
    <LedgerRow key={String(index)} item={item} index={index} card={card} />
  ));
  return (
    <table class={units === 'imperial' ? 'load-ledger load-ledger-feet' : 'load-ledger'}>
      <caption class="unseen">What is aboard, with what each puts on the axles</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">kg</th>
          <th scope="col">Where</th>
          <th scope="col">
            <abbr title="how far behind the front axle">
              {settings.value.units === 'imperial' ? 'ft' : 'm'}
            </abbr>
          </th>
          <th scope="col" class="load-figure">
            front
          </th>
          <th scope="col" class="load-figure">
            rear
          </th>
          <td />
        </tr>
      </thead>
      <tbody>
        {empty && (
          <tr class="load-fixed">
            <th scope="row">Empty, ready to drive</th>
            <td class="load-typed">{bareKg(empty.frontKg + empty.rearKg)}</td>
            <td colSpan={2} class="load-includes">
              {sayEmptyWeight(empty)}
            </td>
            <td class="load-figure">{bareKg(empty.frontKg)}</td>
            <td class="load-figure">{bareKg(empty.rearKg)}</td>
            <td />
          </tr>
        )}
        {rows}
      </tbody>
      {result && <Sums result={result} />}
    </table>
  );
}

/** As loaded, the plates, and what is left, each rounded against the driver. */
function Sums({ result }: { result: LoadFigures }) {
  const { plates, spare, frontKg, rearKg, grossKg } = result;
  const spares = [spare.grossKg, spare.frontKg, spare.rearKg];
  const cell = (kg: number) => (
    <span class={kg < -1e-6 ? 'load-minus' : undefined}>{bareKg(kg, 'down')}</span>
  );
  return (
    <tfoot>
      <tr>
        <th scope="row">As loaded</th>
        <td class="load-typed">{bareKg(grossKg, 'up')}</td>
        <td colSpan={2} />
        <td class="load-figure">{bareKg(frontKg, 'up')}</td>
        <td class="load-figure">{bareKg(rearKg, 'up')}</td>
        <td />
      </tr>
      <tr>
        <th scope="row">Plates</th>
        <td class="load-typed">{bareKg(plates.grossKg, 'down')}</td>
        <td colSpan={2} />
        <td class="load-figure">{bareKg(plates.frontKg, 'down')}</td>
        <td class="load-figure">{bareKg(plates.rearKg, 'down')}</td>
        <td />
      </tr>
      <tr>
        <th scope="row">{spares.some((kg) => kg < -1e-6) ? 'Spare; minus is over' : 'Spare'}</th>
        <td class="load-typed">{cell(spare.grossKg)}</td>
        <td colSpan={2} />
        <td class="load-figure">{cell(spare.frontKg)}</td>
        <td class="load-figure">{cell(spare.rearKg)}</td>
        <td />
      </tr>
    </tfoot>
  );
}
