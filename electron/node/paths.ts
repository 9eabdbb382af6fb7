import { resolve } from 'node:path';

/** The folders of a checkout, from this file's own place, so that any working directory will do. */
export const ROOT = resolve(import.meta.dirname, '../..');
export const DIST = resolve(ROOT, 'dist');
export const RENDERER_DIST = resolve(DIST, 'renderer');
