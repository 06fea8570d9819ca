import './shelf.css';
import { useEffect } from 'preact/hooks';
import { printBytes } from '../../geo/units/print.ts';
import { counted } from '../../geo/units/text.ts';
import type { ShelfShown } from '../../main/contract/shelf.ts';
import { importFile } from '../actions/keep-map.ts';
import { lookAtShelf } from '../actions/shelf-changed.ts';
import { shelf, shelfTold } from '../state/shelf.ts';
import { Changes } from './changes.tsx';
import { ChooseMapFile } from './choose-file.tsx';
import { MapEntry } from './map-entry.tsx';
import { OWN_DRIVES } from './own-drives.ts';
import { ShelfProgress } from './progress.tsx';

/** The maps that are kept on this computer, and what can be done with them. */
export function ShelfDialog() {
  useEffect(() => {
    shelfTold.value = undefined;
    void lookAtShelf();
  }, []);
  const now = shelf.value;
  return (
    <>
      {now === undefined && <p class="soft">Looking at the shelf…</p>}
      {now && 'problem' in now && <p class="problem">{now.problem}</p>}
      {now && 'maps' in now && <InAll shelf={now} />}
      <p>
        <ChooseMapFile say="A map for the shelf" chief onChoose={(file) => void importFile(file)}>
          Import a map file…
        </ChooseMapFile>
      </p>
      <p class="small soft">
        An extract of OpenStreetMap data: .osm.pbf, .osm, .osm.gz, or an Overpass answer. It is read once;
        from then on a drive there needs no map named. To have a drive’s map fetched, open the drive: the ways
        to get it stand beside its findings.
      </p>
      <div class="shelf-now">
        <ShelfProgress />
      </div>
      <Changes />
      {now && 'maps' in now && now.maps.length > 0 && (
        <ul class="shelf-maps">
          {now.maps.map((map) => (
            <MapEntry key={map.name} map={map} now={new Date().toISOString()} />
          ))}
        </ul>
      )}
    </>
  );
}

function InAll({ shelf: { maps, bytes, folder } }: { shelf: ShelfShown }) {
  return (
    <>
      {maps.length === 0 ? (
        <p>Nothing is on your shelf yet. {OWN_DRIVES}</p>
      ) : (
        <p>
          {counted(maps.length, 'map')}, {printBytes(bytes)} in all.
        </p>
      )}
      <p class="small soft">
        Kept on this computer in <bdi class="shelf-folder">{folder}</bdi>
      </p>
    </>
  );
}
