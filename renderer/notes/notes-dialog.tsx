import './notes.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import { figuresOf, printFigure } from '../../geo/notes/say-note.ts';
import { capital, clip } from '../../geo/units/text.ts';
import type { KeptNote } from '../../main/contract/note-calls.ts';
import { keptNotes } from '../state/notes.ts';
import { openedMap } from '../state/opened.ts';
import { changeNote, lookAtNotes, placeOnMap } from './begin.ts';
import { today } from './draft.ts';
import { openNotes, saveNotesAs } from './keep.ts';
import { PencilMark } from './pencil.tsx';

/** All that the firm has noted; made, changed, given away and taken in here. */
export function NotesDialog() {
  const [said, say] = useState('');
  useEffect(() => void lookAtNotes(), []);
  const notes = keptNotes.value;
  return (
    <>
      <p>
        What the firm knows of a place and the map does not: a measured bridge, a bent tree, a tight gate.
        Notes count in every check, and in the ways round.
      </p>
      <p class="note-acts">
        <button type="button" class="chief" disabled={!openedMap.value} onClick={placeOnMap}>
          Note a place on the map
        </button>
        <TakeIn say={say} />
        <SaveAs as="geojson" none={!notes?.length} say={say}>
          Save for another firm
        </SaveAs>
        <SaveAs as="for mappers" none={!notes?.length || !openedMap.value} say={say}>
          Save for whoever maps
        </SaveAs>
      </p>
      <p role="status" class="small">
        {said}
      </p>
      {notes?.length === 0 && (
        <p class="soft">
          Nothing is noted yet. Open a finding and press “I measured it…” or “Note this place…”.
        </p>
      )}
      <List notes={notes ?? []} />
    </>
  );
}

function List({ notes }: { notes: readonly KeptNote[] }) {
  const day = today();
  const isOver = ({ fields: { until } }: KeptNote) => until !== undefined && until < day;
  const holding = notes.filter((note) => !isOver(note));
  const over = notes.filter(isOver);
  return (
    <>
      {holding.length > 0 && (
        <ul class="note-list" aria-label="Notes">
          {holding.map((note) => (
            <Entry key={note.id} note={note} />
          ))}
        </ul>
      )}
      {over.length > 0 && (
        <details>
          <summary>Ended ({over.length})</summary>
          <ul class="note-list" aria-label="Ended notes">
            {over.map((note) => (
              <Entry key={note.id} note={note} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Entry({ note: { id, fields, others } }: { note: KeptNote }) {
  const { say, road, seen, by, until, at } = fields;
  const figures = figuresOf(fields).map(
    (one) => `${one.subject === 'mass' ? 'weight' : one.subject} ${printFigure(one)}`,
  );
  const place = road?.name ?? road?.ref ?? `${at.lat.toFixed(4)}, ${at.lon.toFixed(4)}`;
  const facts = [
    clip(place, 60),
    ...(seen === undefined && by === undefined ? [] : [[seen, by].filter(Boolean).join(' ')]),
    ...(until === undefined ? [] : [`until ${until}`]),
    ...(others.length > 0 ? ['changed in two places'] : []),
  ];
  return (
    <li>
      <PencilMark size={18} />
      <span class="note-says">
        {figures.length > 0 && <b>{capital(figures.join(', '))}. </b>}
        <bdi>{clip(say, 200)}</bdi>
        <span class="small soft">
          <bdi>{facts.join(' · ')}</bdi>
        </span>
      </span>
      <button type="button" aria-label={`Change the note: ${clip(say, 60)}`} onClick={() => changeNote(id)}>
        Change…
      </button>
    </li>
  );
}

interface ActProps {
  say(text: string): void;
}

function TakeIn({ say }: ActProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        Take in notes…
      </button>
      <input
        ref={input}
        type="file"
        accept=".geojson,.json,application/geo+json"
        aria-label="Notes of another firm, GeoJSON"
        hidden
        onChange={async ({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          if (!file) return;
          const taken = await openNotes(file);
          say('problem' in taken ? taken.problem : taken.say.join(' '));
          currentTarget.value = '';
        }}
      />
    </>
  );
}

function SaveAs({
  as,
  none,
  say,
  children,
}: ActProps & { as: Parameters<typeof saveNotesAs>[0]; none: boolean; children: string }) {
  return (
    <button type="button" disabled={none} onClick={async () => say((await saveNotesAs(as)) ?? '')}>
      {children}
    </button>
  );
}
