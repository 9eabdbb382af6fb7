/** A place in the matrix: a row, and a column of it (0 is the event itself, the services follow). */
export interface Spot {
  readonly row: number;
  readonly column: number;
}

/** Where a key takes the focus in a table of so many rows and columns; null for a key that does not move it. */
export function movedSpot({ row, column }: Spot, key: string, rows: number, columns: number): Spot | null {
  const inside = (value: number, count: number): number => Math.max(0, Math.min(count - 1, value));
  switch (key) {
    case 'ArrowUp':
      return { row: inside(row - 1, rows), column };
    case 'ArrowDown':
      return { row: inside(row + 1, rows), column };
    case 'ArrowLeft':
      return { row, column: inside(column - 1, columns) };
    case 'ArrowRight':
      return { row, column: inside(column + 1, columns) };
    case 'Home':
      return { row, column: 0 };
    case 'End':
      return { row, column: columns - 1 };
    default:
      return null;
  }
}
