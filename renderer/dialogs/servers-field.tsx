import { useState } from 'preact/hooks';
import { isServerAddress, PUBLIC_SERVERS } from '../../main/contract/server-address.ts';
import type { Settings } from '../../main/contract/settings.ts';

type ServerUse = keyof Settings['servers'];

/** Who is asked for maps. Each address holds as soon as it can be one. */
export function Servers({
  servers,
  onChange,
}: {
  servers: Settings['servers'];
  onChange(changed: Settings['servers']): void;
}) {
  const field = (use: ServerUse, say: string) => (
    <ServerField
      say={say}
      kept={servers[use]}
      usual={PUBLIC_SERVERS[use]}
      take={(address) => onChange({ ...servers, [use]: address })}
    />
  );
  return (
    <fieldset class="field">
      <legend>Servers that maps are fetched from</legend>
      {field('line', 'Along a drive: a server that answers Overpass questions')}
      {field('region', 'Whole regions: the list of an extract server')}
      <p class="small soft">
        Nothing is sent to either before you have said yes to it. The public ones are shared by many and run
        by a few people: a firm that fetches often should name a server of its own.
      </p>
    </fieldset>
  );
}

interface FieldProps {
  readonly say: string;
  readonly kept: string;
  /** the public server's address */
  readonly usual: string;
  take(address: string): void;
}

function ServerField({ say, kept, usual, take }: FieldProps) {
  const [text, setText] = useState(kept);
  const wrong = !isServerAddress(text);
  const change = (typed: string) => {
    setText(typed);
    if (isServerAddress(typed)) take(typed);
  };
  return (
    <div class="server-field">
      <label class="wide-field">
        <span>{say}</span>
        <input
          type="url"
          value={text}
          maxLength={500}
          spellcheck={false}
          aria-invalid={wrong}
          onInput={({ currentTarget }) => setText(currentTarget.value.trim())}
          onChange={({ currentTarget }) => change(currentTarget.value.trim())}
        />
      </label>
      {text !== usual && (
        <button type="button" onClick={() => change(usual)}>
          Use the public one
          <span class="unseen">: {usual}</span>
        </button>
      )}
      {wrong && (
        <p class="problem-inline" role="alert">
          {text === '' ? 'There must be an address.' : 'That is no server’s address.'} It begins with
          https://, names the server and holds no password. Until it does, {kept} is asked.
        </p>
      )}
    </div>
  );
}
