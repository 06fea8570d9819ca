import type { YardDrive } from '../../../main/contract/yard/yard.ts';
import { chooseVehicle } from '../../actions/choose.ts';
import { openWanted } from '../../actions/open.ts';
import { SHELF } from '../../actions/wanted.ts';
import { leaveAt } from '../../state/check.ts';
import { description, vehicles } from '../../state/kept.ts';
import { openedDrive } from '../../state/opened.ts';
import { selectedId } from '../../state/shown.ts';
import { showView } from '../../state/views.ts';
import { cellsOf, columns } from './yard.ts';

/** Opens a drive in Drive, with a vehicle and at its kept leave time, at the place that decides. */
export async function openCell(drive: YardDrive, vehicle: string | undefined): Promise<void> {
  const column = columns.peek().find(({ id }) => id === vehicle);
  const inFleet = column && vehicles.peek().some(({ id }) => id === column.vehicleId);
  if (column && inFleet) chooseVehicle(column.vehicleId);
  showView('drive');
  leaveAt.value = drive.leaveAt;
  const source = { kind: 'library', id: drive.id } as const;
  const onShelf = (description.peek()?.shelfMaps ?? 0) > 0;
  await openWanted({
    ...(onShelf ? { map: { source: SHELF, about: source } } : {}),
    drive: { source, track: drive.track },
  });
  const opened = openedDrive.peek()?.source;
  const finding = vehicle === undefined ? undefined : cellsOf(drive.id).get(vehicle)?.cell.tightest?.finding;
  if (opened?.kind === 'library' && opened.id === drive.id && finding !== undefined)
    selectedId.value = finding;
}
