import { mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

/** Packages of the packer, as it finds them itself. */
export const packer = createRequire(createRequire(import.meta.url).resolve('app-builder-lib/package.json'));

/** As many as Electron has had since version 41, all off and in an order of its own (electron/fuses, README). */
const FUSES = 9;

/** What the fuses are found by in Electron's program, the version of their list, their number and their states. */
const WIRE = Buffer.concat([
  Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'),
  Buffer.from([1, FUSES]),
  Buffer.from('0'.repeat(FUSES)),
]);

const PLIST = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0"><dict><key>CFBundleName</key><string>stub</string></dict></plist>`;

interface Exe {
  generate(): ArrayBuffer;
}
interface Resources {
  readonly entries: unknown[];
  outputResource(exe: Exe): void;
}
interface VersionInfo {
  setFileVersion(major: number, minor: number, micro: number, revision: number, lang: number): void;
  setStringValues(language: { lang: number; codepage: number }, values: Record<string, string>): void;
  outputToResourceEntries(entries: unknown[]): void;
}
const { NtExecutable, NtExecutableResource, Resource } = packer('resedit') as {
  NtExecutable: { createEmpty(is32Bit: boolean, isDLL: boolean): Exe };
  NtExecutableResource: { from(exe: Exe): Resources };
  Resource: { VersionInfo: { createEmpty(): VersionInfo } };
};

/** A program in Windows' form that does nothing, with the version that the packer puts its own in the place of. */
function emptyExe(): Buffer {
  const exe = NtExecutable.createEmpty(false, false);
  const resources = NtExecutableResource.from(exe);
  const version = Resource.VersionInfo.createEmpty();
  const english = 1033;
  version.setFileVersion(1, 0, 0, 0, english);
  version.setStringValues({ lang: english, codepage: 1200 }, { ProductName: 'stub' });
  version.outputToResourceEntries(resources.entries);
  resources.outputResource(exe);
  return Buffer.from(exe.generate());
}

/** Lays out what stands for Electron's program of three systems: files of its names that hold the fuses, nothing that runs. */
export function writeStubElectron(folder: string): void {
  const write = (name: string, content: string | Buffer) => {
    const path = join(folder, name);
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(path, content);
  };
  write('electron', WIRE);
  write('electron.exe', Buffer.concat([emptyExe(), WIRE]));
  const mac = 'Electron.app/Contents';
  write(`${mac}/Info.plist`, PLIST);
  write(`${mac}/MacOS/Electron`, WIRE);
  write(`${mac}/Frameworks/Electron Framework.framework/Electron Framework`, WIRE);
  for (const helper of ['', ' (GPU)', ' (Plugin)', ' (Renderer)']) {
    const app = `${mac}/Frameworks/Electron Helper${helper}.app/Contents`;
    write(`${app}/Info.plist`, PLIST);
    write(`${app}/MacOS/Electron Helper${helper}`, 'stub');
  }
}
