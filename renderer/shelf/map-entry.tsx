import { useEffect, useRef, useState } from 'preact/hooks';
import { printBytes } from '../../geo/units/print.ts';
import { clip } from '../../geo/units/text.ts';
import type { ShelfMap } from '../../main/contract/shelf.ts';
import { importFile, removeMap, verifyMap } from '../actions/keep-map.ts';
import { settings } from '../state/kept.ts';
import { sayArea } from './area.ts';
import { AreaDrawing } from './area-drawing.tsx';
import { ChooseMapFile } from './choose-file.tsx';
import { sayAge, sayHolds, sayMend, sayOlder, sayOrigin } from './say-map.ts';

/** One map of the shelf: where it lies, what it holds, how old it is, and what can be done with it. */
export function MapEntry({ map, now }: { map: ShelfMap; now: string }) {
  const age = sayAge(map, now);
  const older = sayOlder(map);
  return (
    <li class="shelf-map">
      <AreaDrawing area={map.area} />
      <div>
        <h3>
          <bdi>{clip(map.name, 80)}</bdi>
        </h3>
        <p>{sayHolds(map)}</p>
        <p class={age.doubtful ? 'map-old' : ''}>{age.say}</p>
        {older !== undefined && <p class="map-old">{older}</p>}
        <p class="small soft">
          <bdi>{sayOrigin(map)}.</bdi> {sayArea(map.area, settings.value.units)}
        </p>
        {map.state === 'damaged' && <Damaged map={map} />}
        <Acts map={map} />
      </div>
    </li>
  );
}

/** What mends it: one press where its files are there, else a file that is chosen. */
function Damaged({ map: { name, mendFrom = 'files', sources } }: { map: ShelfMap }) {
  const of = <span class="unseen"> {clip(name, 60)}</span>;
  if (mendFrom === 'files')
    return (
      <p class="problem">
        {DAMAGED}{' '}
        <button type="button" onClick={() => void verifyMap(name, { mend: true })}>
          Mend{of}
        </button>
      </p>
    );
  return (
    <p class="problem">
      {DAMAGED} {sayMend(mendFrom, sources)}{' '}
      <ChooseMapFile
        say={`A file to make ${clip(name, 60)} anew`}
        onChoose={(file) => void importFile(file, name)}
      >
        Choose the file…{of}
      </ChooseMapFile>
    </p>
  );
}

const DAMAGED = 'Damaged: what cannot be read of it is unknown on every drive there.';

function Acts({ map }: { map: ShelfMap }) {
  const [removing, setRemoving] = useState(false);
  const remove = useRef<HTMLButtonElement>(null);
  const { name } = map;
  const of = <span class="unseen"> {clip(name, 60)}</span>;
  return (
    <div class="shelf-acts">
      <button type="button" onClick={() => void verifyMap(name, { mend: false })}>
        Look for damage{of}
      </button>
      <ChooseMapFile
        say={`A newer file for ${clip(name, 60)}`}
        onChoose={(file) => void importFile(file, name)}
      >
        Newer file…{of}
      </ChooseMapFile>
      <button ref={remove} type="button" aria-expanded={removing} onClick={() => setRemoving(!removing)}>
        Remove…{of}
      </button>
      {removing && (
        <Removing
          map={map}
          onKeep={() => {
            setRemoving(false);
            remove.current?.focus();
          }}
        />
      )}
    </div>
  );
}

/** Asked in place: what is gone has to be fetched or taken in again. */
function Removing({ map: { name, bytes }, onKeep }: { map: ShelfMap; onKeep(): void }) {
  const keep = useRef<HTMLButtonElement>(null);
  useEffect(() => keep.current?.focus(), []);
  return (
    <fieldset class="shelf-removing" aria-label={`Remove ${clip(name, 60)}?`}>
      <p>
        Remove <bdi>{clip(name, 60)}</bdi> and free {printBytes(bytes)}? Drives there will need it fetched or
        imported again.
      </p>
      <button ref={keep} type="button" onClick={onKeep}>
        Keep it
      </button>
      <button
        type="button"
        onClick={() => {
          onKeep();
          void removeMap(name);
        }}
      >
        Remove it
      </button>
    </fieldset>
  );
}
