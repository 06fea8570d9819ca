import { clip } from '../geo/units/text.ts';
import { isMostlyOff } from './actions/which-map.ts';
import { Doing } from './look/doing.tsx';
import { sayFromShelf } from './shelf/say-map.ts';
import { shelfWork, work } from './state/happening.ts';
import { openedDrive, openedMap } from './state/opened.ts';
import { dialog } from './state/page.ts';
import { mapsOnShelf, shelfWaiting } from './state/shelf.ts';

/** One line at the foot, always there: long work with its way to stop, else the map that is open; and the shelf. */
export function StatusLine() {
  return (
    <footer class="status-line small">
      {work.value ? <Doing doing={work.value} /> : <MapInShort />}
      {shelfWork.value && <Doing doing={shelfWork.value} more={shelfWaiting.value} beside />}
      <button
        type="button"
        class="to-shelf"
        aria-haspopup="dialog"
        onClick={() => {
          dialog.value = 'shelf';
        }}
      >
        Shelf
      </button>
    </footer>
  );
}

function MapInShort() {
  const map = openedMap.value;
  if (!map) return <span class="soft">No map is open.</span>;
  const { summary, about } = map;
  if (summary.shelf)
    return (
      <span class="soft">
        <bdi>
          {sayFromShelf(openedDrive.value?.followed.shelf ?? { ...summary.shelf, sources: summary.sources })}
        </bdi>
      </span>
    );
  if (openedDrive.value && isMostlyOff(openedDrive.value.followed))
    return (
      <span class="soft">
        {map.source.kind === 'sample' && mapsOnShelf.value > 0
          ? 'No map on your shelf could be read.'
          : 'No map covers this drive.'}
      </span>
    );
  const date = summary.sources
    .map(({ dataDate }) => dataDate?.slice(0, 10))
    .find((each) => each !== undefined);
  return (
    <span class="soft">
      Map <bdi>{clip(summary.name, 60)}</bdi>, {summary.roads.toLocaleString('en-GB')} roads
      {about ? ' about the drive' : ''}, {date === undefined ? 'its date is not known' : `data of ${date}`}
    </span>
  );
}
