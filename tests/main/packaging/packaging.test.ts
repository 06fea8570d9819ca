import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { writeIcns, writeIco } from '../../../main/electron/icons/containers.ts';

const ROOT = resolve(import.meta.dirname, '../../..');

// the packer brings its own schema, and the reader and validator it uses for it
const packer = createRequire(createRequire(import.meta.url).resolve('app-builder-lib/package.json'));
const schema = JSON.parse(readFileSync(packer.resolve('app-builder-lib/scheme.json'), 'utf8'));
const yaml: { load(text: string): unknown } = packer('js-yaml');
const Ajv: new (
  options: object,
) => {
  compile(schema: object): { (data: unknown): boolean; errors?: unknown };
} = packer('ajv').default;

interface Config {
  electronFuses: Record<string, boolean>;
  fileAssociations: { ext: string; role: string }[];
  nsis: { perMachine: boolean };
  files: string[];
  extraResources: { from: string }[];
  [key: string]: unknown;
}
const config = yaml.load(readFileSync(resolve(ROOT, 'electron-builder.yml'), 'utf8')) as Config;
const validate = new Ajv({ allErrors: true, strict: false }).compile(schema);
const project = JSON.parse(readFileSync(resolve(ROOT, 'package.json'), 'utf8'));

describe('the packing instructions', () => {
  it("hold to the packer's own schema", () => {
    expect(validate(config) ? [] : validate.errors).toEqual([]);
  });

  it('would be refused with a misspelt word', () => {
    expect(validate({ ...config, electronFuse: {} })).toBe(false);
    expect(validate({ ...config, electronFuses: { runAsNod: false } })).toBe(false);
  });

  it('set every fuse there is', () => {
    const known = Object.keys(schema.definitions.FuseOptionsV1.properties);
    // not a fuse but a way of signing
    const fuses = known.filter((name) => name !== 'resetAdHocDarwinSignature');
    expect(Object.keys(config.electronFuses).sort()).toEqual(fuses.sort());
    expect(config.electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  it('open .gpx files, on Windows from an installation for all users', () => {
    expect(config.fileAssociations).toMatchObject([{ ext: 'gpx', role: 'Viewer' }]);
    expect(config.nsis.perMachine).toBe(true);
  });

  it('cover the three systems and take in what the program runs from', () => {
    for (const system of ['win', 'mac', 'linux']) expect(config[system]).toHaveProperty('target');
    expect(project.main).toBe('.build/program/electron/main.js');
    expect(config.files).toEqual(expect.arrayContaining(['.build/program/**/*', '.build/window/**/*']));
    expect(config.extraResources[0]).toMatchObject({ from: 'sample-routes', to: 'sample-routes' });
  });
});

describe('the icon', () => {
  const mark = sharp(resolve(ROOT, 'main/electron/icons/mark.svg'));
  const pngOf = (size: number) => mark.clone().resize(size).png().toBuffer();

  it('is a PNG of its size', async () => {
    const png = await pngOf(32);
    expect(await sharp(png).metadata()).toMatchObject({
      format: 'png',
      width: 32,
      height: 32,
      hasAlpha: true,
    });
  });

  it('is clear outside its plate and shows the gauge bar across the lane', async () => {
    const size = 64;
    const rgba = await mark.clone().resize(size).ensureAlpha().raw().toBuffer();
    const at = (u: number, v: number) => {
      const from = (Math.floor(v * size) * size + Math.floor(u * size)) * 4;
      return [...rgba.subarray(from, from + 4)];
    };
    expect(at(0, 0)[3]).toBe(0);
    expect(at(0.5, 0.45)).toEqual([0xe6, 0x9f, 0x00, 255]);
    expect(at(0.4, 0.8)).toEqual([0xf3, 0xee, 0xe2, 255]);
  });

  it('fits the containers of Windows and macOS', async () => {
    const pictures = await Promise.all(
      [16, 32, 128, 256].map(async (size) => ({ size, png: await pngOf(size) })),
    );
    const ico = writeIco(pictures);
    expect([ico.readUInt16LE(2), ico.readUInt16LE(4)]).toEqual([1, 4]);
    pictures.forEach(({ size, png }, i) => {
      const entry = 6 + 16 * i;
      expect(ico.readUInt8(entry)).toBe(size % 256);
      const from = ico.readUInt32LE(entry + 12);
      expect(ico.subarray(from, from + ico.readUInt32LE(entry + 8)).equals(png)).toBe(true);
    });
    const icns = writeIcns(pictures);
    expect(icns.subarray(0, 4).toString()).toBe('icns');
    expect(icns.readUInt32BE(4)).toBe(icns.length);
    const types: string[] = [];
    for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4))
      types.push(icns.subarray(at, at + 4).toString());
    expect(types).toEqual(['ic11', 'ic07', 'ic08']);
  });
});
