import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import { bareKg, LIMIT_NAME } from '../../../geo/load/weigh/say-plates.ts';
import { sumsOf } from '../../../geo/load/weigh/sums.ts';

/** The plates, what is worked out, and empty boxes for what the weighbridge shows. */
export function SheetFigures({ result }: { result: LoadFigures }) {
  return (
    <table class="load-sheet-figures">
      <thead>
        <tr>
          <th scope="col">kg</th>
          <th scope="col">plate</th>
          <th scope="col">as listed</th>
          <th scope="col">spare</th>
          <th scope="col">as weighed</th>
        </tr>
      </thead>
      <tbody>
        {sumsOf(result).map(({ limit, plateKg, loadKg, spareKg, over }) => (
          <tr key={limit}>
            <th scope="row">{LIMIT_NAME[limit]}</th>
            <td>{bareKg(plateKg, 'down')}</td>
            <td>{bareKg(loadKg, 'up')}</td>
            <td>
              {bareKg(spareKg, 'down')}
              {over ? ' over' : ''}
            </td>
            <td class="load-sheet-box" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
