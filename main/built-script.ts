/** The folder of built scripts, also when this module itself runs from its source. */
const BUILT = new URL(import.meta.url.endsWith('.js') ? '../' : '../.build/', import.meta.url);

/** Where a thread's script was built. @param path as its source is named, from the top: `main/cli/check-worker` */
export function builtScript(path: string): URL {
  return new URL(`${path}.js`, BUILT);
}
