import type { Ink } from './types.ts';

export type PaletteName = 'light' | 'dark' | 'print';

/**
 * Colours of each ink on each ground. Text inks (ink, boat, grid-text, water, run, run-selected, feed, link, finding,
 * lost, live, accent) have at least 4.5:1 against their paper; only `boat-faint` and `grid`, which carry no text, are
 * paler. Blue for runs, ochre for feeds, violet for links and brick for findings stay apart for the usual kinds of colour
 * blindness, and each also has its own dash or mark.
 */
export const PALETTES: Readonly<Record<PaletteName, Readonly<Record<Ink, string>>>> = {
  light: {
    none: 'none',
    paper: '#f7f4ec',
    ink: '#1d2b36',
    boat: '#34424d',
    'boat-faint': '#96a0a6',
    grid: '#dcd8cb',
    'grid-text': '#66717a',
    water: '#3a6f86',
    run: '#0b5c8a',
    'run-selected': '#b03a00',
    feed: '#7d5600',
    link: '#6b4a86',
    finding: '#9c2a1a',
    lost: '#9c2a1a',
    live: '#1d6550',
    accent: '#0b5c8a',
  },
  dark: {
    none: 'none',
    paper: '#242629',
    ink: '#ece9e1',
    boat: '#c4c2bb',
    'boat-faint': '#7c7e80',
    grid: '#36393d',
    'grid-text': '#9d9c97',
    water: '#86b3c4',
    run: '#7cc0e6',
    'run-selected': '#ffb27d',
    feed: '#dfb45f',
    link: '#c6a8e2',
    finding: '#f2998a',
    lost: '#f2998a',
    live: '#86cdb2',
    accent: '#7cc0e6',
  },
  print: {
    none: 'none',
    paper: '#ffffff',
    ink: '#10181f',
    boat: '#2a343c',
    'boat-faint': '#8b949a',
    grid: '#d4d8da',
    'grid-text': '#59636b',
    water: '#2c6279',
    run: '#0a4f78',
    'run-selected': '#a03400',
    feed: '#6d4a00',
    link: '#5b3d74',
    finding: '#8f2314',
    lost: '#8f2314',
    live: '#175643',
    accent: '#0a4f78',
  },
};
