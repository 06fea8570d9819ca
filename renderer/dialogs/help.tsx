import { LEVEL_MEANS, LEVEL_WORD, LEVELS } from '../../geo/report/level.ts';
import { LevelMark, VerdictMark } from '../look/level-mark.tsx';
import { description } from '../state/kept.ts';
import { dialog } from '../state/page.ts';

const NOT_CHECKED = [
  'What nobody has mapped: a sign, a bridge or a branch that is missing from the map data is missing here.',
  'Roadworks, closures of the day, diversions, parked cars, traffic, weather and floods.',
  'What is really aboard. Weight and axle limits are compared with the plated weights on the card, and with the load where one is listed: weigh the vehicle.',
  'Whether the driver’s licence covers the vehicle, tolls, toll stickers and insurance.',
  'Car parks, pitches and yards beyond the drive itself.',
];

const WORDS: readonly (readonly [string, string])[] = [
  [
    'Plate',
    'the metal plate or sticker on the vehicle: the most it may weigh in all (gross) and on each axle. It counts, not the brochure.',
  ],
  [
    'Empty weight, ready to drive',
    'what each axle carries on a weighbridge with nothing loaded, fuel at 90 % and, where the card says so, the driver and fresh water. Papers call it the mass in running order.',
  ],
  ['Spare', 'limit minus vehicle: what is left. Below nothing it is over.'],
];

const KEYS: readonly (readonly [string, string])[] = [
  ['Tab, Shift Tab', 'to the next or previous control'],
  ['Alt 1, Alt 2 …', 'to the first, second … view'],
  ['↓ ↑ or j k', 'in the findings: the next or previous one'],
  ['Home, End', 'in the findings: the first or last one'],
  ['Enter', 'opens the finding, Enter again closes it'],
  ['↓ ↑, Page Down, Page Up', 'on the strip: on along the drive, or back'],
  ['Alt ←, Alt →', 'back to what you looked at before, and forward'],
  ['Space, ← →', 'in Swing: plays or pauses; a little on or back'],
  ['← → ↑ ↓', 'in Swing, steering by hand: turn the wheel, roll on and back'],
  ['← →, Shift ← →', 'in Load, on an item of the drawing: moves it by 5 or 50 cm'],
  ['Delete, Enter', 'in Load, on an item: takes it off, or goes to its line in the table'],
  ['Ctrl Z, Ctrl Shift Z', 'in Load: undo, redo'],
  ['Escape', 'closes the opened finding or the dialog, and goes back to where you were'],
];

/** Within reach at all times: what the levels mean, what is not checked, and the keys. */
export function Help() {
  return (
    <>
      <Levels />
      <Words />
      <NotChecked />
      <Shelf />
      <Rules />
      <Keys />
      <GoOn />
    </>
  );
}

function Levels() {
  return (
    <section>
      <h3>What each level means</h3>
      <dl class="levels">
        {LEVELS.map((level) => (
          <div key={level}>
            <dt class={`level-${level}`}>
              <LevelMark level={level} /> {LEVEL_WORD[level]}
            </dt>
            <dd>{LEVEL_MEANS[level]}</dd>
          </div>
        ))}
        <div>
          <dt>
            <VerdictMark verdict="clear" size={20} /> {LEVEL_WORD.clear}
          </dt>
          <dd>{LEVEL_MEANS.clear}</dd>
        </div>
      </dl>
      <p>
        The number that decides is always limit − vehicle = spare, with the limit rounded down and the vehicle
        rounded up. Heights carry 0.05 m for measuring.
      </p>
    </section>
  );
}

function Words() {
  return (
    <section>
      <h3>Words</h3>
      <dl class="levels">
        {WORDS.map(([word, means]) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{means}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function NotChecked() {
  return (
    <section>
      <h3>What is not checked</h3>
      <ul class="plain-list">
        {NOT_CHECKED.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </section>
  );
}

function Shelf() {
  return (
    <section>
      <h3>The shelf</h3>
      <p>
        The shelf holds the maps that are kept on this computer. A drive is opened without a thought of maps:
        what of it is on the shelf is used at once, and what is missing can be fetched, along the drive or by
        whole regions, or taken in from a map file. Nothing is sent to anybody before you have seen what, to
        whom and how much, and have said yes. A map grows old: put a newer one in its place now and then.
      </p>
      <p>
        <button
          type="button"
          onClick={() => {
            dialog.value = 'shelf';
          }}
        >
          Look at the shelf
        </button>
      </p>
    </section>
  );
}

function Rules() {
  return (
    <section>
      <h3>What the rules rest on</h3>
      <p>
        What signs mean and how fast you may go differ by country. Each rule that is used stands on one page,
        with where it comes from.
      </p>
      <p>
        <button
          type="button"
          onClick={() => {
            dialog.value = 'rules';
          }}
        >
          About these rules
        </button>
      </p>
    </section>
  );
}

function Keys() {
  return (
    <section>
      <h3>Keys</h3>
      <dl class="keys">
        {KEYS.map(([key, does]) => (
          <div key={key}>
            <dt class="mono">{key}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function GoOn() {
  return (
    <section>
      <h3>How to go on</h3>
      <p>
        Choose the vehicle and the leave time in the bar above. Open your own drive with Open…, or drop it on
        the window; its map comes from the shelf, or beside it from a file.
      </p>
      <p class="small soft">
        {description.value?.program}. Map data © OpenStreetMap contributors. Parts that others have made stand
        with their licences in the program’s folder, under <span class="mono">resources/licences</span>.
      </p>
    </section>
  );
}
