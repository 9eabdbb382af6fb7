import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Configuration } from 'electron-builder';
import { closeTransport } from './macosDescription.ts';

// How the installers are made; `npm run dist` and electron-builder itself read this. Nothing here sends anything anywhere:
// no publishing, no update channel, no telemetry.

const root = resolve(import.meta.dirname, '..');
const fromRoot = (path: string): string => resolve(root, path);
const { devDependencies } = JSON.parse(readFileSync(fromRoot('package.json'), 'utf8')) as {
  devDependencies: { electron: string };
};

// Whoever publishes says who they are; a package without that says nothing untrue (docs/release.md).
const { BACKSTAY_MAINTAINER: maintainer, BACKSTAY_HOMEPAGE: homepage } = process.env;

const configuration: Configuration = {
  // Written backwards like a domain name, yet nobody's domain: there is no top-level domain called backstay.
  appId: 'desktop.backstay',
  productName: 'Backstay',
  copyright: 'Copyright © 2026 The Backstay authors',
  electronVersion: devDependencies.electron,
  directories: { output: fromRoot('out'), buildResources: fromRoot('packaging/resources') },

  // The allow-list; a test reads the archive back.
  files: ['dist/electron/main.js', 'dist/electron/preload.cjs', 'dist/renderer/**/*', '!dist/renderer/**/*.map'],
  extraResources: [{ from: 'dist/licences.txt', to: 'licences.txt' }],
  extraMetadata: { ...(homepage === undefined ? {} : { homepage }) },
  removePackageScripts: true,
  removePackageKeywords: true,
  asar: { smartUnpack: false },
  compression: 'normal',
  electronLanguages: ['en-GB', 'en-US'],

  // The bundles hold every module: none is to be gathered, rebuilt or installed.
  beforeBuild: async () => false,
  afterPack: async ({ electronPlatformName, appOutDir }) => {
    if (electronPlatformName === 'darwin') await closeTransport(appOutDir);
  },
  publish: null,

  // Every fuse is said, so that no change of default changes the program.
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    // The page comes over app://, never over file://.
    grantFileProtocolExtraPrivileges: false,
  },

  fileAssociations: [
    {
      ext: 'backstay',
      name: 'Backstay project',
      description: "A boat's radio installation",
      mimeType: 'application/x-backstay',
      // The icon is packaging/resources/backstay.ico or .icns, found by the extension's name.
      role: 'Editor',
      rank: 'Owner',
    },
  ],

  linux: {
    target: ['AppImage', 'deb'],
    executableName: 'backstay',
    icon: fromRoot('packaging/resources/icons'),
    category: 'Science;Engineering',
    synopsis: "Design and audit of a boat's radio installation",
    ...(maintainer === undefined ? {} : { maintainer, vendor: maintainer }),
  },
  deb: { packageCategory: 'science', priority: 'optional' },

  win: { target: [{ target: 'nsis', arch: ['x64'] }], icon: fromRoot('packaging/resources/icon.ico') },
  nsis: {
    oneClick: false,
    perMachine: false,
    allowToChangeInstallationDirectory: true,
    // The reader's own files, recovery copies among them, outlive the program.
    deleteAppDataOnUninstall: false,
    differentialPackage: false,
    packElevateHelper: false,
  },

  mac: {
    target: [
      { target: 'dmg', arch: ['x64', 'arm64'] },
      { target: 'zip', arch: ['x64', 'arm64'] },
    ],
    icon: fromRoot('packaging/resources/icon.icns'),
    category: 'public.app-category.productivity',
    hardenedRuntime: true,
    gatekeeperAssess: false,
    entitlements: fromRoot('packaging/resources/entitlements.mac.plist'),
    // Electron's own description asks for these; the program uses none of them. null takes an entry out.
    extendInfo: {
      NSAudioCaptureUsageDescription: null,
      NSBluetoothAlwaysUsageDescription: null,
      NSBluetoothPeripheralUsageDescription: null,
      NSCameraUsageDescription: null,
      NSMicrophoneUsageDescription: null,
    },
    entitlementsInherit: fromRoot('packaging/resources/entitlements.mac.plist'),
  },
  dmg: { writeUpdateInfo: false },
};

export default configuration;
