import { formatQuantity, formatText } from '../../core/units/format.ts';
import type { Quantity, RichText, Unit } from '../../core/units/quantity.ts';
import { useApp } from '../store/context.ts';

/** Formatters in the reader's own units: `quantity(5.3, 'dB')`, `rich(finding.measured)`. */
export function useFormat(): {
  quantity: (value: number, unit: Unit, digits?: number) => string;
  rich: (text: RichText) => string;
} {
  const preferences = useApp((state) => state.preferences);
  return {
    quantity: (value, unit, digits) => {
      const shown: Quantity = digits === undefined ? { value, unit } : { value, unit, digits };
      return formatQuantity(shown, preferences);
    },
    rich: (text) => formatText(text, preferences),
  };
}
