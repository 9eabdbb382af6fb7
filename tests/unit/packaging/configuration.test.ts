import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { validateConfiguration } from 'app-builder-lib/out/util/config/config.js';
import { DebugLogger } from 'builder-util';
import { describe, expect, it } from 'vitest';
import configuration from '../../../electron-builder.ts';

const resources = configuration.directories?.buildResources ?? '';

describe('how installers are made', () => {
  it("passes electron-builder's own schema", async () => {
    await validateConfiguration(configuration, new DebugLogger(false));
  });

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
