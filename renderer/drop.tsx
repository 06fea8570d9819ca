import { dropTarget } from './state/drop-target.ts';
import { dialog, dropping } from './state/page.ts';
import { takeFiles } from './take/take-files.ts';

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
    const items = [...(event.dataTransfer?.items ?? [])];
    const entries = items.map((item) => ({ file: item.getAsFile(), entry: item.webkitGetAsEntry() }));
    const folders = entries.flatMap(({ entry }) => (entry?.isDirectory ? [entry.name] : []));
    const files = entries.flatMap(({ file, entry }) => (file && !entry?.isDirectory ? [file] : []));
    if (files.length + folders.length === 0) return;
    dialog.value = undefined;
    const target = dropTarget.peek();
    if (target) target.take(files, folders);
    else void takeFiles(files, folders);
  });
  return () => stop.abort();
}

export function DropSign() {
  return dropping.value ? (
    <div class="drop-sign">
      <p>
        <b>Drop to open</b>
        <br />
        {dropTarget.value?.say ??
          'a drive (GPX), a map (.osm.pbf, .osm, .osm.gz, Overpass JSON), a vehicle card or a load list'}
      </p>
    </div>
  ) : null;
}
