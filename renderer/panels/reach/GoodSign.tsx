/** The verdict as a sign with its word. */
export function GoodSign({ isGood }: { isGood: boolean }) {
  return isGood ? (
    <span className="grade grade--full">✓ Serves</span>
  ) : (
    <span className="grade grade--lost">✕ Look at this</span>
  );
}
