/** The boat seen from astern, leaning as she is tried: starboard to the right. Faint at both ends of her roll. */
export function BoatSection({ heelDeg, rollDeg }: { heelDeg: number; rollDeg: number }) {
  const ends = rollDeg === 0 ? [] : [heelDeg - rollDeg, heelDeg + rollDeg];
  return (
    <svg className="boat-section" width={58} height={58} viewBox="-29 -38 58 58" aria-hidden="true">
      {ends.map((deg) => (
        <path key={deg} className="boat-section-roll" d="M0 4V-34" transform={`rotate(${deg} 0 4)`} />
      ))}
      <g transform={`rotate(${heelDeg} 0 4)`}>
        <path className="boat-section-hull" d="M-12 -2H12C12 6 6 9 1.5 10V17H-1.5V10C-6 9 -12 6 -12 -2Z" />
        <path className="boat-section-mast" d="M0 -2V-28" />
        <path className="boat-section-whip" d="M0 -28V-35" />
      </g>
      <path className="boat-section-sea" d="M-28 4H28" />
    </svg>
  );
}
