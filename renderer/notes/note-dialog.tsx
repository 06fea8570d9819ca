import './notes.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import { BY_MOST, SAY_MOST } from '../../geo/notes/bounds.ts';
import type { NoteFields } from '../../geo/notes/note.ts';
import { printLimitM } from '../../geo/units/print.ts';
import { notice } from '../state/happening.ts';
import { type NoteDraft, noteDraft } from '../state/notes.ts';
import { dialog } from '../state/page.ts';
import { rememberBy, today } from './draft.ts';
import { keepNote, type NoteKept, removeNote } from './keep.ts';
import { readNote, type Typed, typedOf } from './typed-note.ts';

/** One note, new or kept: what the firm knows of the place, what it measured, who and when. */
export function NoteDialog() {
  const draft = noteDraft.value;
  return draft ? <NoteForm key={draft.of?.id ?? 'new'} draft={draft} /> : null;
}

function NoteForm({ draft }: { draft: NoteDraft }) {
  const [typed, setTyped] = useState<Typed>(() => typedOf(draft.fields));
  const [fault, setFault] = useState('');
  const first = useRef<HTMLInputElement & HTMLTextAreaElement>(null);
  useEffect(() => first.current?.focus(), []);
  const put = (part: Partial<Typed>) => setTyped((now) => ({ ...now, ...part }));
  const done = (kept: NoteKept) => {
    if ('problem' in kept) setFault(kept.problem);
    else {
      dialog.value = undefined;
      if (kept.say.length > 0) notice.value = { kind: 'note', say: kept.say.join(' ') };
    }
  };
  const keep = async () => {
    const read = readNote(typed, draft.fields);
    if (!read.ok) return setFault(read.error.message);
    rememberBy(read.value.by);
    done(await keepNote(draft.of, read.value));
  };
  const { of } = draft;
  const field = (name: 'height' | 'width' | 'mass', say: string, hint: string) => (
    <label class="note-field">
      <span>{say}</span>
      <input
        {...(draft.asks === name ? { ref: first } : {})}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        placeholder={hint}
        value={typed[name]}
        onInput={({ currentTarget }) => put({ [name]: currentTarget.value })}
      />
    </label>
  );
  return (
    <form
      class="note-form"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <p>
        <bdi>{draft.where}</bdi>
      </p>
      <Others draft={draft} keep={async (other) => of && done(await keepNote(of, other))} />
      <fieldset class="note-figures">
        <legend>What you measured there, if anything</legend>
        {field('height', 'Height', '3.40 m or 11\'2"')}
        {field('width', 'Width of the gap', '2.60 m')}
        {field('mass', 'Weight on the sign', '3500 kg')}
      </fieldset>
      <p class="small soft">
        A figure counts like a mapped one, 25 m either way on this road. It never undoes a limit that is
        mapped.
      </p>
      <label class="note-words">
        <span>What whoever drives there should know</span>
        <textarea
          {...(draft.asks === undefined ? { ref: first } : {})}
          rows={3}
          maxLength={SAY_MOST}
          value={typed.say}
          onInput={({ currentTarget }) => put({ say: currentTarget.value })}
        />
      </label>
      <div class="note-when">
        <Day say="Seen on" value={typed.seen} put={(seen) => put({ seen })} />
        <Day say="Last day it counts" value={typed.until} put={(until) => put({ until })} />
        <label class="note-field">
          <span>Your initials</span>
          <input
            type="text"
            autocomplete="off"
            size={BY_MOST}
            maxLength={BY_MOST}
            value={typed.by}
            onInput={({ currentTarget }) => put({ by: currentTarget.value })}
          />
        </label>
      </div>
      {draft.asksLeave && (
        <label class="note-one-way">
          <input
            type="checkbox"
            checked={typed.leave}
            onChange={({ currentTarget }) => put({ leave: currentTarget.checked })}
          />{' '}
          We have leave to drive here: who gave it, and for what, stands in the words above
        </label>
      )}
      {draft.drivenDeg !== undefined && (
        <label class="note-one-way">
          <input
            type="checkbox"
            checked={typed.headingDeg !== undefined}
            onChange={({ currentTarget }) =>
              put({ headingDeg: currentTarget.checked ? draft.drivenDeg : undefined })
            }
          />{' '}
          Only in the direction of this drive
        </label>
      )}
      <p role="alert" class={fault === '' ? 'unseen' : 'problem'}>
        {fault}
      </p>
      <p class="note-acts">
        <button type="submit" class="chief">
          Keep the note
        </button>
        {of && (
          <button type="button" onClick={() => put({ until: dayBefore(today()) })}>
            Let it end now
          </button>
        )}
        {of && (
          <button type="button" onClick={async () => done(await removeNote(of))}>
            Delete
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            dialog.value = undefined;
          }}
        >
          Cancel
        </button>
      </p>
    </form>
  );
}

function Day({ say, value, put }: { say: string; value: string; put(day: string): void }) {
  return (
    <label class="note-field">
      <span>{say}</span>
      <input type="date" value={value} onInput={({ currentTarget }) => put(currentTarget.value)} />
    </label>
  );
}

function dayBefore(day: string): string {
  const date = new Date(`${day}T12:00:00Z`);
  date.setUTCDate(date.getUTCDate() - 1);
  return date.toISOString().slice(0, 10);
}

/** A note changed in two places at once: what stands beside it, until it is kept anew. */
function Others({ draft: { of }, keep }: { draft: NoteDraft; keep(other: NoteFields): void }) {
  if (!of || of.others.length === 0) return null;
  return (
    <div class="note-others">
      <p>
        It was changed in two places at once. Until you keep one, the lower figure counts. The other says:
      </p>
      <ul>
        {of.others.map((other) => {
          const { say, heightM, widthM, by, seen } = other;
          return (
            <li key={JSON.stringify(other)}>
              <bdi>{say}</bdi>
              {heightM !== undefined && `, height ${printLimitM(heightM)}`}
              {widthM !== undefined && `, width ${printLimitM(widthM)}`}
              {seen !== undefined && `, ${seen}`}
              {by !== undefined && ` (${by})`}{' '}
              <button type="button" onClick={() => keep(other)}>
                Keep this one
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
