import { clip } from '../../../geo/units/text.ts';
import type { YardDrive, YardVehicle } from '../../../main/contract/yard/yard.ts';
import { handOverPairs } from '../../state/sheet-wanted.ts';
import { marking, pairOf } from './marked.ts';

/** A cell's own way to hand its drive over, drawn where one points or goes by the keys; Tab goes there from the cell. */
export function HandOverCell({
  drive,
  vehicle,
  isPlace,
}: {
  drive: YardDrive;
  vehicle: YardVehicle;
  isPlace: boolean;
}) {
  if (marking.value) return null;
  return (
    <button
      type="button"
      class="yard-hand"
      tabIndex={isPlace ? 0 : -1}
      title="Hand over"
      onClick={() => handOverPairs([pairOf(drive, vehicle)])}
    >
      <svg width="14" height="16" viewBox="0 0 14 16" aria-hidden="true">
        <path d="M1.5 1h7.5l3.5 3.5V15h-11zM9 1v3.5h3.5M4 8h6M4 11h6" />
      </svg>
      <span class="unseen">Hand over with {clip(vehicle.name, 60)}</span>
    </button>
  );
}
