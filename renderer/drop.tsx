import { openFiles } from './actions/open.ts';
import { openList } from './load/state/load-file.ts';
import { dialog, dropping } from './state/page.ts';
import { shownView, showView } from './state/views.ts';

/** Takes files dropped anywhere on the window. @returns the way to end it */
export function dropFilesOn(page: Window): () => void {
  const stop = new AbortController();
  const on = (type: 'dragenter' | 'dragover' | 'dragleave' | 'drop', act: (event: DragEvent) => void) =>
    page.addEventListener(type, act, { signal: stop.signal });
  const hold = (event: DragEvent) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'copy';
    dropping.value = true;
  };
  on('dragenter', hold);
  on('dragover', hold);
  on('dragleave', (event) => {
    // leaving one element for another is not leaving the window
    if (event.relatedTarget === null) dropping.value = false;
  });
  on('drop', (event) => {
    event.preventDefault();
    dropping.value = false;
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length === 0) return;
    dialog.value = undefined;
    const [only] = files;
    if (shownView.peek() === 'load' && files.length === 1 && only && /\.json$/i.test(only.name)) {
      void openList(only);
      return;
    }
    showView('drive');
    void openFiles(files);
  });
  return () => stop.abort();
}

export function DropSign() {
  return dropping.value ? (
    <div class="drop-sign">
      <p>
        <b>Drop to open</b>
        <br />
        {shownView.value === 'load' && 'a load list (.json), '}a drive (GPX), a map (.osm.pbf, .osm, .osm.gz,
        Overpass JSON), or one of each
      </p>
    </div>
  ) : null;
}
