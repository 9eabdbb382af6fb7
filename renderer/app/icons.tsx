import type { ReactNode } from 'react';

const PATHS = {
  undo: 'M6.5 3 3 6.5 6.5 10 M3 6.5H9.5A3.5 3.5 0 0 1 9.5 13.5H6',
  redo: 'M9.5 3 13 6.5 9.5 10 M13 6.5H6.5A3.5 3.5 0 0 0 6.5 13.5H10',
  plus: 'M8 3V13 M3 8H13',
  minus: 'M3 8H13',
  fit: 'M3 6V3H6 M10 3H13V6 M13 10V13H10 M6 13H3V10',
  chevron: 'M4.5 6.5 8 10 11.5 6.5',
  chevronRight: 'M6.5 4.5 10 8 6.5 11.5',
  search: 'M7 11A4 4 0 1 0 7 3 4 4 0 0 0 7 11Z M10 10 13.5 13.5',
  close: 'M4 4 12 12 M12 4 4 12',
  grip: 'M6 4V4.01 M10 4V4.01 M6 8V8.01 M10 8V8.01 M6 12V12.01 M10 12V12.01',
  // One sign per kind of part, after the schematic symbols: a set, an aerial, a coupler, a fix, a cell, a beacon, a box.
  radio: 'M2.5 4.5H13.5V11.5H2.5Z M5 7V9 M7 7V9 M11 8V8.01',
  antenna: 'M8 14V3 M3.5 3 8 8 12.5 3',
  inline: 'M2 8H5 M11 5H14 M11 11H14 M5 3.5H11V12.5H5Z',
  'position-source': 'M8 13A5 5 0 1 0 8 3 5 5 0 0 0 8 13Z M8 1V5 M8 11V15 M1 8H5 M11 8H15',
  power: 'M6 3V13 M10 5.5V10.5 M2 8H6 M10 8H14',
  standalone: 'M5.5 6H10.5V14H5.5Z M8 6V2 M7 9H9',
  equipment: 'M3 3H13V13H3Z M3 8H13',
} as const;
export type IconName = keyof typeof PATHS;

/** One of the program's own line icons; decoration only, the control carries the name. */
export function Icon({ name, size = 16 }: { name: IconName; size?: number }): ReactNode {
  return (
    <svg width={size} height={size} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <path
        d={PATHS[name]}
        fill="none"
        stroke="currentColor"
        strokeWidth="1.5"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}
