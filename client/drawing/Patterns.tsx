/** Fills of a drawing: hatch for work under way, dots for ground, waves for water. Ids are the drawing's own. */
export function Patterns({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern
        id={`${id}-hatch`}
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect className="d-paper" width="7" height="7" />
        <line className="d-thin" x1="1" y1="0" x2="1" y2="7" />
      </pattern>
      <pattern id={`${id}-ground`} width="10" height="10" patternUnits="userSpaceOnUse">
        <rect className="d-ground" width="10" height="10" />
        <circle className="d-dot" cx="2" cy="3" r="0.8" />
        <circle className="d-dot" cx="7" cy="8" r="0.8" />
      </pattern>
      <pattern id={`${id}-water`} width="36" height="16" patternUnits="userSpaceOnUse">
        <rect className="d-water" width="36" height="16" />
        <path className="d-wave" d="M0 6q9 -5 18 0t18 0" />
      </pattern>
    </defs>
  );
}
