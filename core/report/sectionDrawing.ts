import { scaleText } from '../drawing/titleBlock.ts';
import type { SheetContext } from './context.ts';
import { sheetDrawing } from './profileSheet.ts';
import type { SheetSection } from './types.ts';

/** The profile on a page of its own, turned sideways. */
export function drawingSection(context: SheetContext): SheetSection {
  const { drawing, page } = sheetDrawing(context.project, context.assessment, context.paper, context.preferences);
  return {
    id: 'drawing',
    title: 'Profile',
    page,
    ownPage: true,
    blocks: [
      {
        kind: 'drawing',
        drawing,
        caption:
          `Scale ${scaleText(drawing.projection)} when printed at full size on ${context.paper}. Bow to the right, seen from ` +
          'starboard. Balloon numbers are those of the equipment list, run numbers those of the cable schedule, marks ' +
          'such as A1 those of the findings.',
      },
    ],
  };
}
