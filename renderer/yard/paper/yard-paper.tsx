import './yard-paper.css';
import { render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { dayInWords, sayMoment } from '../../../geo/clock/print-dates.ts';
import { LEVEL_WORD, VERDICTS } from '../../../geo/report/level.ts';
import { STANDING_CAUTION } from '../../../geo/report/standing-caution.ts';
import { clip, counted } from '../../../geo/units/text.ts';
import { sayTightest, spareFigure } from '../../../geo/yard/say-cell.ts';
import type { YardDrive, YardVehicle } from '../../../main/contract/yard/yard.ts';
import { VerdictMark } from '../../look/level-mark.tsx';
import { settings } from '../../state/kept.ts';
import { apartIds, cellsOf, columns, drives, rows, sayLength, whyFailed } from '../state/yard.ts';

/** As many vehicles as stand abreast on A4 beside the drive's name. */
const ABREAST = 8;

/** The yard as it is printed by the browser's menu: made when it is printed, since the screen draws what is in sight alone. */
export function YardPaper() {
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    const fill = () => {
      if (place.current) render(<Paper />, place.current);
    };
    const empty = () => {
      if (place.current) render(null, place.current);
    };
    window.addEventListener('beforeprint', fill);
    window.addEventListener('afterprint', empty);
    return () => {
      empty();
      window.removeEventListener('beforeprint', fill);
      window.removeEventListener('afterprint', empty);
    };
  }, []);
  return <section ref={place} class="yard-paper" aria-hidden="true" />;
}

function Paper() {
  const shown = rows.peek();
  const all = drives.peek().length;
  const { heading } = settings.peek().firm;
  return (
    <>
      {heading !== '' && <p>{clip(heading, 200)}</p>}
      <h1>Which vehicle may take which drive</h1>
      <p>
        {today()}.{' '}
        {shown.length === all ? counted(all, 'drive') : `${shown.length} of ${counted(all, 'drive')}`} with{' '}
        {counted(columns.peek().length, 'vehicle')}, each on its plates, at the drive’s leave time where it
        has one.
      </p>
      <Legend />
      {inGroups(columns.peek()).map((vehicles) => (
        <Table key={vehicles[0]?.id} drives={shown} vehicles={vehicles} />
      ))}
      <p>
        <b>{STANDING_CAUTION}</b>
      </p>
    </>
  );
}

function Legend() {
  return (
    <ul class="yard-paper-legend">
      {VERDICTS.map((verdict) => (
        <li key={verdict}>
          <VerdictMark verdict={verdict} size={14} /> {LEVEL_WORD[verdict]}
        </li>
      ))}
      <li>the number beside a mark: so many places</li>
      <li>the figure: what is left there, or by how much it is over (−)</li>
      <li>old: map, card, note or spare changed since</li>
      <li>· not checked, × could not be checked</li>
    </ul>
  );
}

function Table({
  drives: down,
  vehicles,
}: {
  drives: readonly YardDrive[];
  vehicles: readonly YardVehicle[];
}) {
  const { units } = settings.peek();
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Drive</th>
          {vehicles.map(({ id, name }) => (
            <th key={id} scope="col">
              <bdi>{clip(name, 60)}</bdi>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {down.map((drive) => (
          <tr key={drive.id}>
            <th scope="row">
              <bdi>{clip(drive.name, 120)}</bdi>
              <br />
              <span class="yard-paper-small">
                {drive.alike !== undefined && `${drive.alike}, `}
                {sayLength(drive, units)}
                {drive.leaveAt !== undefined && `, leaves ${sayMoment(drive.leaveAt)}`}
                {apartIds.peek().has(drive.id) && ', two versions: choose one'}
              </span>
            </th>
            {vehicles.map(({ id }) => (
              <Cell key={id} drive={drive.id} vehicle={id} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Cell({ drive, vehicle }: { drive: string; vehicle: string }) {
  const known = cellsOf(drive).get(vehicle);
  if (known === undefined) return <td>{whyFailed(drive) === undefined ? '·' : '×'}</td>;
  const { cell, stale } = known;
  const { units } = settings.peek();
  const count = cell.verdict === 'clear' ? 0 : cell.counts[cell.verdict];
  const about = sayTightest(cell, units).split(':')[0];
  return (
    <td class={cell.verdict === 'barred' ? 'yard-paper-barred' : ''}>
      {stale.length > 0 && (
        <>
          <span class="yard-paper-small">out of date:</span>
          <br />
        </>
      )}
      <VerdictMark verdict={cell.verdict} size={16} />
      {count > 1 && ` ${count}`}
      {cell.tightest && (
        <>
          <br />
          {spareFigure(cell, units)}
          <br />
          <span class="yard-paper-small">{about}</span>
        </>
      )}
    </td>
  );
}

function inGroups(all: readonly YardVehicle[]): (readonly YardVehicle[])[] {
  const groups: (readonly YardVehicle[])[] = [];
  for (let i = 0; i < all.length; i += ABREAST) groups.push(all.slice(i, i + ABREAST));
  return groups;
}

/** By this computer's clock. */
function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return `As on ${dayInWords(day)}, ${two(now.getHours())}:${two(now.getMinutes())}`;
}
