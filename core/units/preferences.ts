/** How a reader wants quantities shown. Kept with the user's own settings, never in the document. */
export interface UnitPreferences {
  readonly length: 'm' | 'ft';
  readonly distance: 'nm' | 'km';
  readonly wire: 'mm2' | 'awg';
  readonly decimal: '.' | ',';
}

export const METRIC_PREFERENCES: UnitPreferences = { length: 'm', distance: 'nm', wire: 'mm2', decimal: '.' };
