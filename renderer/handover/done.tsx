import { SheetView } from './sheet-view.tsx';
import { type Handed, saveAll, saveForPhone } from './work.ts';

/** What was handed over: its sheet, to be printed, and the ways to take it along. */
export function Done({ handed }: { handed: Handed }) {
  const { number, replaces, say = [], files } = handed;
  const sheet = files['sheet.html'];
  return (
    <>
      <p role="status">
        Sheet <b class="mono">{number}</b>, kept in the library.
        {replaces !== undefined && ` It takes the place of sheet ${replaces}.`}
      </p>
      {say.map((each) => (
        <p key={each} class="problem">
          {each}
        </p>
      ))}
      <p class="handing-ways">
        <button type="button" class="chief" onClick={() => window.print()}>
          Print the sheet
        </button>
        <button type="button" onClick={() => saveForPhone(handed)}>
          Save for the phone
        </button>
        <button type="button" onClick={() => saveAll(handed)}>
          Save every file
        </button>
      </p>
      <p class="small soft">
        For the phone: one archive with the page, the GPX and the sheet. The visor card is among all files.
      </p>
      {sheet !== undefined && <SheetView html={sheet} name={`Drive sheet ${number}`} />}
    </>
  );
}
