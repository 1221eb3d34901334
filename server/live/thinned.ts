/** Points beyond these cannot be told apart on a page. */
const most = 300;

/** At most about `most` of the points, evenly chosen; the first, the last and those that `keep` asks for always stay. */
export function thinned<Point>(points: readonly Point[], keep: (point: Point) => boolean): Point[] {
  const step = Math.ceil(points.length / most);
  return points.filter(
    (point, row) => row % step === 0 || row === points.length - 1 || keep(point),
  );
}
