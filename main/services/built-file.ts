/** The folder that the program was built to, whether this module runs there, in a bundle or from its source. */
const BUILT = new URL(import.meta.url.endsWith('.js') ? '../' : '../../.build/program/', import.meta.url);

/** Where a file of main/ was built. @param path below main/, as it is named when built: `cli/check/check-worker.js` */
export function builtFile(path: string): URL {
  return new URL(path, BUILT);
}
