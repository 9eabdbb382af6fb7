import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import configuration from '../../../packaging/configuration.ts';
import { withoutTransportExceptions } from '../../../packaging/macosDescription.ts';

// That electron-builder takes the configuration as valid, and what it makes of it, is in archive.test.ts.

const resources = configuration.directories?.buildResources ?? '';

describe('how installers are made', () => {
  it('makes what each system installs', () => {
    expect(configuration.linux?.target).toEqual(['AppImage', 'deb']);
    expect(configuration.win?.target).toEqual([{ target: 'nsis', arch: ['x64'] }]);
    expect(configuration.mac?.target).toEqual([
      { target: 'dmg', arch: ['x64', 'arm64'] },
      { target: 'zip', arch: ['x64', 'arm64'] },
    ]);
  });

  it('sends nothing anywhere and has no way to update itself', () => {
    expect(configuration.publish).toBeNull();
    const own = JSON.parse(readFileSync(resolve(import.meta.dirname, '../../../package.json'), 'utf8'));
    expect(Object.keys(own.dependencies).filter((name) => /updater|telemetry|sentry|analytics/.test(name))).toEqual([]);
  });

  it('opens the hardened runtime for the script engine and for nothing else', () => {
    expect(configuration.mac?.hardenedRuntime).toBe(true);
    const plist = readFileSync(resolve(resources, 'entitlements.mac.plist'), 'utf8');
    expect([...plist.matchAll(/<key>([^<]+)<\/key>/g)].map((key) => key[1])).toEqual([
      'com.apple.security.cs.allow-jit',
    ]);
  });

  it('ties .backstay files to the program, with an icon for each system that shows one', () => {
    const [association] = [configuration.fileAssociations ?? []].flat();
    expect(association?.ext).toBe('backstay');
    for (const file of ['backstay.ico', 'backstay.icns', 'icon.ico', 'icon.icns', 'icons/512x512.png'])
      expect(existsSync(resolve(resources, file)), file).toBe(true);
  });
});

describe('the description of the macOS bundle', () => {
  const rest = '<dict>\n<key>A</key>\n<string>1</string>';

  it('loses its exceptions to secure transport, nested as they are, and nothing else', () => {
    const exceptions =
      '<key>NSAppTransportSecurity</key>\n<dict><key>X</key><dict><key>Y</key><dict></dict></dict><true/></dict>';
    const after = '<key>Z</key>\n<dict></dict>\n</dict>';
    expect(withoutTransportExceptions(`${rest}\n${exceptions}\n${after}`)).toBe(`${rest}\n${after}`);
  });

  it('stays as it is when it has none, and is refused when it breaks off within them', () => {
    expect(withoutTransportExceptions(`${rest}</dict>`)).toBe(`${rest}</dict>`);
    expect(() => withoutTransportExceptions('<key>NSAppTransportSecurity</key><dict><dict></dict>')).toThrow(
      'ends within',
    );
  });
});
