import { useState } from 'preact/hooks';
import { lengthEntry } from '../../geo/units/entry-text.ts';
import { printMetres } from '../../geo/units/print.ts';
import { readEntryLength, readEntryMass } from '../../geo/units/read-entry.ts';
import { LOAD_MARGIN_MAX_KG, MARGIN_MAX_M } from '../../main/contract/limits.ts';
import type { Settings } from '../../main/contract/settings.ts';
import { tileOrigin } from '../../main/contract/tile-address.ts';
import { saveSettings } from '../actions/keep.ts';
import { settings } from '../state/kept.ts';
import { FirmFields } from './firm-field.tsx';
import { Servers } from './servers-field.tsx';

/** Countries whose rules the program is most often asked for; the place of the drive tells by itself where it can. */
const COUNTRIES = 'AT AU BE CA CH CZ DE DK ES FI FR GB IE IT LU NL NO NZ PL PT SE US'.split(' ');

/** Every choice holds at once and is kept. */
export function SettingsForm() {
  const now = settings.value;
  const change = (part: Partial<Settings>) => void saveSettings({ ...settings.peek(), ...part });
  return (
    <>
      <Choice
        legend="Units"
        name="units"
        value={now.units}
        options={{ metric: 'metric', imperial: 'miles, feet and inches', both: 'both' }}
        onChoose={(units) => change({ units })}
      />
      <Choice
        legend="Colours"
        name="palette"
        value={now.palette}
        options={{
          system: 'as this computer is set',
          day: 'light, for the day',
          night: 'dark, for the night',
        }}
        onChoose={(palette) => change({ palette })}
      />
      <Margins margins={now.margins} onChange={(margins) => change({ margins })} />
      <LoadMargin value={now.loadMarginKg} onChange={(loadMarginKg) => change({ loadMarginKg })} />
      <label class="field">
        <span>Country where the place does not tell</span>
        <select
          value={now.country ?? ''}
          onChange={({ currentTarget }) => change({ country: currentTarget.value || null })}
        >
          <option value="">none</option>
          {withChosen(now.country).map(({ code, name }) => (
            <option key={code} value={code}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <FirmFields firm={now.firm} before={now.before} onChange={change} />
      <Servers servers={now.servers} onChange={(servers) => change({ servers })} />
      <Tiles tiles={now.tiles} onChange={(tiles) => change({ tiles })} />
    </>
  );
}

function withChosen(chosen: string | null): { code: string; name: string }[] {
  const names = new Intl.DisplayNames('en', { type: 'region' });
  const codes = chosen === null || COUNTRIES.includes(chosen) ? COUNTRIES : [...COUNTRIES, chosen];
  return codes
    .map((code) => ({ code, name: names.of(code) ?? code }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

function Choice<T extends string>({
  legend,
  name,
  value,
  options,
  onChoose,
}: {
  legend: string;
  name: string;
  value: T;
  options: Readonly<Record<T, string>>;
  onChoose(chosen: T): void;
}) {
  return (
    <fieldset class="field">
      <legend>{legend}</legend>
      {(Object.keys(options) as T[]).map((option) => (
        <label key={option}>
          <input
            type="radio"
            name={name}
            value={option}
            checked={option === value}
            onChange={() => onChoose(option)}
          />{' '}
          {options[option]}
        </label>
      ))}
    </fieldset>
  );
}

function Margins({
  margins,
  onChange,
}: {
  margins: Settings['margins'];
  onChange(changed: Settings['margins']): void;
}) {
  return (
    <fieldset class="field">
      <legend>A passage is called tight when less than this is left</legend>
      <MarginField
        say="in height"
        value={margins.heightM}
        onChange={(heightM) => onChange({ ...margins, heightM })}
      />
      <MarginField
        say="in width between posts, in all"
        value={margins.physicalWidthM}
        onChange={(physicalWidthM) => onChange({ ...margins, physicalWidthM })}
      />
    </fieldset>
  );
}

function MarginField({
  say,
  value,
  onChange,
}: {
  say: string;
  value: number;
  onChange(metres: number): void;
}) {
  const read = (text: string) => {
    const m = readEntryLength(text);
    return m.ok && m.value <= MARGIN_MAX_M ? m.value : undefined;
  };
  const hint = `Write a length up to ${printMetres(MARGIN_MAX_M)}, such as 0.15 or 6".`;
  const text = lengthEntry(value, { inFeet: settings.value.units === 'imperial' });
  return <Margin say={`m ${say}`} text={text} hint={hint} read={read} take={onChange} />;
}

function LoadMargin({ value, onChange }: { value: number; onChange(kg: number): void }) {
  const read = (text: string) => {
    const kg = readEntryMass(text, { least: 0, most: LOAD_MARGIN_MAX_KG });
    return kg.ok && kg.value <= LOAD_MARGIN_MAX_KG ? Math.round(kg.value) : undefined;
  };
  return (
    <fieldset class="field">
      <legend>A load is called tight when less than this is left on a plate</legend>
      <Margin
        say="kg on each axle and in all"
        text={String(value)}
        hint={`Write kilograms from 0 to ${LOAD_MARGIN_MAX_KG}, such as 50.`}
        read={read}
        take={onChange}
      />
    </fieldset>
  );
}

interface MarginProps {
  readonly say: string;
  readonly text: string;
  readonly hint: string;
  /** undefined for what is no margin */
  read(text: string): number | undefined;
  take(value: number): void;
}

function Margin({ say, text, hint, read, take }: MarginProps) {
  const [problem, setProblem] = useState(false);
  return (
    <label class="margin">
      <input
        type="text"
        inputMode="text"
        defaultValue={text}
        aria-invalid={problem}
        onInput={({ currentTarget }) => {
          const value = read(currentTarget.value);
          setProblem(value === undefined);
          if (value !== undefined) take(value);
        }}
      />{' '}
      {say}
      {problem && <span class="problem-inline"> {hint}</span>}
    </label>
  );
}

function Tiles({
  tiles,
  onChange,
}: {
  tiles: Settings['tiles'];
  onChange(changed: Settings['tiles']): void;
}) {
  const [address, setAddress] = useState(tiles?.address ?? '');
  const [attribution, setAttribution] = useState(tiles?.attribution ?? '');
  const wrong = address !== '' && tileOrigin(address) === undefined;
  const keep = () => {
    if (wrong) return;
    onChange(address === '' ? null : { address, attribution });
  };
  return (
    <fieldset class="field">
      <legend>Background picture from the network</legend>
      <label class="wide-field">
        <span>Tile address, empty for none</span>
        <input
          type="url"
          value={address}
          maxLength={500}
          aria-invalid={wrong}
          placeholder="https://…/{z}/{x}/{y}.png"
          onInput={({ currentTarget }) => setAddress(currentTarget.value.trim())}
          onChange={keep}
        />
      </label>
      {wrong && (
        <p class="problem-inline">An address starts with https:// and contains {'{z}, {x} and {y}'}.</p>
      )}
      <label class="wide-field">
        <span>Whose picture it is, shown on the map</span>
        <input
          type="text"
          value={attribution}
          maxLength={300}
          onInput={({ currentTarget }) => setAttribution(currentTarget.value)}
          onChange={keep}
        />
      </label>
      <p class="small soft">
        The program draws its own map and needs no network. With an address, the places you look at become
        known to that server. It takes effect when the window is loaded again.
      </p>
    </fieldset>
  );
}
