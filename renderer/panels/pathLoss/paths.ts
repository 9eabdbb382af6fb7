import { indexProject } from '../../../core/catalogue/lookup.ts';
import { countedLossDb } from '../../../core/links/countedLoss.ts';
import type { PathBudget, PathService } from '../../../core/links/types.ts';
import type { Project, Subject } from '../../../core/model/project.ts';
import { itemTag } from '../../../core/report/words.ts';
import { lostPercent } from '../../../core/rf/decibels.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import { megahertz, percent, watts } from './figures.ts';

const SERVICE_WORDS: Readonly<Record<PathService, string>> = {
  'vhf-voice': 'voice',
  ais: 'AIS',
  'mf-hf': 'MF/HF',
  'l-band': 'L-band',
  gnss: 'GNSS',
  cellular: 'cellular',
  wifi: 'Wi-Fi',
  broadcast: 'broadcast',
  other: 'at',
};

/** `VHF-1 to A1, voice 156.8 MHz`; a set with its antenna inside has no second end. */
export function pathName(project: Project, path: PathBudget): RichText {
  const from = itemTag(project, path.radioId);
  const ends =
    path.antennaId === path.radioId ? `${from}, own antenna` : `${from} to ${itemTag(project, path.antennaId)}`;
  return [`${ends}, ${SERVICE_WORDS[path.service]} `, megahertz(path.frequencyMhz)];
}

/** `after setting SW-1`, or null for a path that is ready. */
export function switchNote(project: Project, path: PathBudget): string | null {
  if (path.switchIds.length === 0) return null;
  return `after setting ${path.switchIds.map((id) => itemTag(project, id)).join(' and ')}`;
}

/** Paths that what is selected lies on, those that transmit first. */
export function pathsTouched(
  project: Project,
  paths: readonly PathBudget[],
  selection: readonly Subject[],
): readonly PathBudget[] {
  const feeds = new Map(project.feeds.map((feed) => [feed.id, feed.to.itemId]));
  const isOn = (path: PathBudget): boolean =>
    selection.some(({ kind, id }) => {
      if (kind === 'run') return path.runIds.includes(id);
      if (kind === 'feed') return feeds.get(id) === path.radioId;
      return kind === 'item' && (path.radioId === id || path.antennaId === id || path.deviceIds.includes(id));
    });
  return paths.filter(isOn).toSorted((a, b) => Number(b.txPowerW !== null) - Number(a.txPowerW !== null));
}

/**
 * The path to begin with, of those that no switch has to be set for: of the voice sets the one that loses most, as
 * measured where it was measured; without one, of those that transmit; else of all.
 */
export function worstPath(paths: readonly PathBudget[]): PathBudget | null {
  const ready = paths.filter(({ switchIds }) => switchIds.length === 0);
  const sending = ready.filter((path) => path.txPowerW !== null);
  const voice = sending.filter((path) => path.service === 'vhf-voice');
  const first = [voice, sending, ready, paths].find((group) => group.length > 0) ?? [];
  return first.toSorted((a, b) => countedLossDb(b) - countedLossDb(a))[0] ?? null;
}

export interface Headline {
  readonly text: RichText;
  /** Null where the limit does not apply: a receiver has no power to lose. */
  readonly verdict: 'within' | 'over' | null;
}

/** What became of the set's power, in one sentence, and whether that is within the project's limit. */
export function headline(path: PathBudget, limitDb: number): Headline {
  const { txPowerW, wattsAtAntenna, lossDb } = path;
  if (path.elements.length === 0) {
    return { text: ['The antenna is inside the set: nothing lies between.'], verdict: null };
  }
  if (txPowerW === null || wattsAtAntenna === null) {
    const why = path.canTransmit ? '' : ' A device on the way does not carry transmit power.';
    return {
      text: ['Receive only: the signal loses ', q(lossDb, 'dB'), ` on its way to the set.${why}`],
      verdict: null,
    };
  }
  const text: RichText = [
    'Your ',
    watts(txPowerW),
    ' arrives as ',
    watts(wattsAtAntenna),
    ': ',
    q(lossDb, 'dB'),
    ', ',
    percent(path.lostPercent),
    ' lost on the way; the limit is ',
    percent(lostPercent(limitDb)),
    '.',
  ];
  return { text, verdict: lossDb > limitDb ? 'over' : 'within' };
}

/** What the antenna's own amplifier makes up, or null for a passive one. */
export function amplifierGainDb(project: Project, path: PathBudget): number | null {
  const part = indexProject(project).effective.get(path.antennaId);
  return part?.kind === 'antenna' ? (part.figures.amplifierGainDb?.value ?? null) : null;
}
