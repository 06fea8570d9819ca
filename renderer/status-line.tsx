import { given } from '../geo/given.ts';
import { clip } from '../geo/units/text.ts';
import { work } from './state/happening.ts';
import { openedMap } from './state/opened.ts';

/** One line at the foot, always there: long work with its way to stop, else the map that is open. */
export function StatusLine() {
  const doing = work.value;
  return (
    <footer class="status-line small">
      {doing ? (
        <>
          <span>{doing.what}</span>
          <progress aria-label={doing.what} {...given({ value: doing.share })} />
          <span class="mono percent">
            {doing.share === undefined ? '' : `${Math.floor(doing.share * 100)} %`}
          </span>
          <button type="button" onClick={doing.stop}>
            Cancel
          </button>
        </>
      ) : (
        <MapInShort />
      )}
    </footer>
  );
}

function MapInShort() {
  const map = openedMap.value?.summary;
  if (!map) return <span class="soft">No map is open.</span>;
  const date = map.sources.map(({ dataDate }) => dataDate?.slice(0, 10)).find((each) => each !== undefined);
  return (
    <span class="soft">
      Map <bdi>{clip(map.name, 60)}</bdi>, {map.roads.toLocaleString('en-GB')} roads
      {openedMap.value?.about ? ' about the drive' : ''},{' '}
      {date === undefined ? 'its date is not known' : `data of ${date}`}
    </span>
  );
}
