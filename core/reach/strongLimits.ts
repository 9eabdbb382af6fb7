import type { PathBudget } from '../links/types.ts';
import {
  STRONG_SIGNAL_LIMITS,
  type StrongSignalLimit,
  type StrongSignalReceiver,
  strongSignalMargins,
} from '../rf/overload.ts';

/** A path whose receiver has strong-signal limits. */
export type Receiving = PathBudget & { readonly service: 'vhf-voice' | 'ais' };

/** Channels of the same service lie side by side within this, MHz: then every limit of the receiver is met at some channel. */
const SAME_SERVICE_MHZ = 1;

/** Which limits a path's receiver has. */
export const receiverOf = ({ service }: Receiving): StrongSignalReceiver => (service === 'ais' ? 'ais' : 'vhf');

/**
 * Limits at an offset, tightest first; on the own service those of every channel of it.
 * @throws RangeError when the offset is no finite number
 */
export function limitsAt(receiver: StrongSignalReceiver, offsetMhz: number): readonly StrongSignalLimit[] {
  const offset = Math.abs(offsetMhz);
  if (offset >= SAME_SERVICE_MHZ) return strongSignalMargins(receiver, 0, offset).map(({ limit }) => limit);
  return STRONG_SIGNAL_LIMITS[receiver]
    .filter(({ fromMhz }) => fromMhz < SAME_SERVICE_MHZ)
    .toSorted((a, b) => a.limitDbm - b.limitDbm);
}
