import { z } from 'zod';
import { METRIC_PREFERENCES } from '../../core/units/preferences.ts';

/** The reader's own settings: kept on this machine, never in the document. */
const preferencesSchema = z.object({
  length: z.enum(['m', 'ft']),
  distance: z.enum(['nm', 'km']),
  wire: z.enum(['mm2', 'awg']),
  decimal: z.enum(['.', ',']),
  theme: z.enum(['system', 'light', 'dark']),
  paper: z.enum(['A4', 'Letter']),
  /** Whether the tour was read or skipped, so that it does not come by itself again. */
  tourSeen: z.boolean(),
});
export type Preferences = z.infer<typeof preferencesSchema>;

const KEY = 'backstay.preferences';
const DEFAULTS: Preferences = { ...METRIC_PREFERENCES, theme: 'system', paper: 'A4', tourSeen: false };

/** Preferences from the last time, or the defaults where there are none or they cannot be read. */
export function loadPreferences(storage: Pick<Storage, 'getItem'>): Preferences {
  try {
    return preferencesSchema.parse({ ...DEFAULTS, ...JSON.parse(storage.getItem(KEY) ?? '{}') });
  } catch {
    return DEFAULTS;
  }
}

/** Keeps the preferences; a full or forbidden storage only means they are forgotten at the next start. */
export function savePreferences(storage: Pick<Storage, 'setItem'>, preferences: Preferences): void {
  try {
    storage.setItem(KEY, JSON.stringify(preferences));
  } catch {
    // Nothing of the user's work is in here.
  }
}
