import { useState } from 'preact/hooks';
import { clip } from '../../../geo/units/text.ts';
import { accept } from '../state/work.ts';
import { cellsOf, columns, initials } from '../state/yard.ts';

const INITIALS_MOST = 6;

/** What is otherwise of a drive than somebody has seen it, vehicle by vehicle. */
export function ChangesOf({ drive }: { drive: string }) {
  const known = cellsOf(drive);
  const changed = columns.value.filter(({ id }) => (known.get(id)?.changes.length ?? 0) > 0);
  return (
    <>
      {changed.map(({ id, name }) => (
        <div key={id} class="yard-changes">
          <b>
            <bdi>{clip(name, 60)}</bdi>
          </b>
          <ul>
            {(known.get(id)?.changes ?? []).map(({ kind, finding, say }, i) => (
              <li key={`${i} ${finding}`}>
                <span class="yard-kind small">{kind}</span> <bdi>{clip(say, 300)}</bdi>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}

/** Keeps that a person has seen what changed of these drives. */
export function Acknowledge({ drives }: { drives: readonly string[] }) {
  const [lacks, setLacks] = useState(false);
  return (
    <form
      class="yard-acknowledge"
      onSubmit={(event) => {
        event.preventDefault();
        const by = initials.peek().trim();
        setLacks(by === '');
        if (by !== '') void accept(drives, by);
      }}
    >
      <label>
        <span class="small soft">Seen by (initials)</span>
        <input
          type="text"
          autocomplete="off"
          maxLength={INITIALS_MOST}
          value={initials.value}
          aria-invalid={lacks}
          onInput={({ currentTarget }) => {
            initials.value = currentTarget.value;
            setLacks(false);
          }}
        />
      </label>
      <button type="submit">I have seen {drives.length === 1 ? 'this' : 'all of this'}</button>
      {lacks && (
        <p role="alert" class="problem-inline small">
          Whose initials? They are kept with the date.
        </p>
      )}
    </form>
  );
}
