import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');
const DOCUMENTS = ['README.md', 'DEVELOPERS.md', 'sample-routes/README.md'];
const scripts = Object.keys(JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).scripts);
const packages = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));

describe.each(DOCUMENTS)('%s', (name) => {
  const text = readFileSync(join(ROOT, name), 'utf8');

  it('names only paths that exist', () => {
    const named = [
      ...text.matchAll(/(?<![\w./-])((?:geo|main|renderer|tests|sample-routes)\/[\w./-]*[\w/])/g),
    ].map(([, path = '']) => path);
    expect(named.filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
  });

  it('names only npm scripts that exist', () => {
    const named = [...text.matchAll(/npm (?:run (?:--silent )?)([\w:-]+)/g)].map(([, script = '']) => script);
    expect(named.filter((script) => !scripts.includes(script))).toEqual([]);
  });
});

describe('DEVELOPERS.md', () => {
  it('gives a reason for every dependency', () => {
    const text = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
    const all = Object.keys({ ...packages.dependencies, ...packages.devDependencies });
    expect(all.filter((name) => !text.includes(`\`${name}\``))).toEqual([]);
  });
});
