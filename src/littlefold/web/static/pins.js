// Where the slips are pinned: beside the drawing, each as near to the place where it acts as its neighbours allow;
// and where the number of a slip is pinned that lies under the drawing.

const APART = 14;
export const EDGE = APART; // px between the slips and the edge of the paper
export const BESIDE = 36; // px between the drawing and the slips
const NUMBER = 14; // px from the middle of a pinned number to its edge
export const APART_NUMBERS = 2 * NUMBER + 2; // px between the middles of two pinned numbers

/**
 * @param {{name: string, width: number, height: number, at: {x: number, y: number} | null}[]} slips  in px
 * @param {{left: number, right: number, top: number, bottom: number}} drawn  what the drawing covers
 * @param {{width: number, height: number, taken: {left: number, right: number}}} room  the paper, and how much of its lower
 *   corners is left free where the slips do not need it
 * @returns {Map<string, {x: number, y: number}>}  the upper left corner of each slip
 */
export function pinned(slips, drawn, room) {
  const sides = shared(slips, drawn, room);
  const places = new Map();
  for (const side of ["left", "right"]) {
    for (const [slip, y] of stacked(sides[side], high(room, side, sides[side]))) places.set(slip.name, { x: across(slip, side, drawn, room), y });
  }
  return places;
}

/** Whether all slips hang at the left: none acts on a place of this sheet, and they find room there. */
export function oneColumn(slips, height) {
  const need = slips.reduce((sum, slip) => sum + slip.height + APART, APART);
  return slips.every((slip) => !slip.at) && need <= height;
}

/**
 * Where the number of a slip is pinned: round about its place, off the letters and the numbers that are there.
 * @param {{x: number, y: number}} place
 * @param {{x: number, y: number, clear: number}[]} taken  what is there, and how far off the middle of the number stays
 * @param {{width: number, height: number}} room
 */
export function freest(place, taken, room) {
  const inside = (at) => ({ x: within(at.x, room.width), y: within(at.y, room.height) });
  const ring = [];
  for (const away of [NUMBER + 4, 2 * NUMBER, 3 * NUMBER]) {
    for (let eighth = 0; eighth < 8; eighth++) {
      const turn = ((eighth + 0.5) * Math.PI) / 4;
      ring.push(inside({ x: place.x + away * Math.cos(turn), y: place.y + away * Math.sin(turn) }));
    }
  }
  const crowd = (at) => taken.reduce((sum, one) => sum + Math.max(0, one.clear - Math.hypot(one.x - at.x, one.y - at.y)), 0);
  return ring.reduce((best, at) => (crowd(at) < crowd(best) ? at : best));
}

function within(at, length) {
  return Math.min(Math.max(at, NUMBER), length - NUMBER);
}

/** Each slip to the side its place is nearer to, as long as that side has room; those without a place where room is. */
function shared(slips, drawn, room) {
  if (oneColumn(slips, room.height - room.taken.left)) return { left: slips, right: [] };
  const sides = { left: [], right: [] };
  const middle = (drawn.left + drawn.right) / 2;
  const used = { left: 0, right: 0 };
  for (const slip of slips.filter((one) => one.at)) put(slip, slip.at.x < middle ? "left" : "right");
  for (const slip of slips.filter((one) => !one.at)) put(slip, used.left <= used.right ? "left" : "right");
  function put(slip, wanted) {
    const other = wanted === "left" ? "right" : "left";
    const left = (side) => free(room, side) - used[side] - slip.height - APART;
    const side = left(wanted) >= 0 || left(wanted) >= left(other) ? wanted : other;
    sides[side].push(slip);
    used[side] += slip.height + APART;
  }
  return sides;
}

/** From top to bottom in the order of their places, moved apart, and back up from the lower edge. */
function stacked(slips, height) {
  const ordered = [...slips].sort((one, other) => wanted(one, height) - wanted(other, height));
  const tops = [];
  let free = APART;
  for (const slip of ordered) {
    const top = Math.max(free, wanted(slip, height));
    tops.push(top);
    free = top + slip.height + APART;
  }
  let floor = height - APART;
  for (let k = ordered.length - 1; k >= 0; k--) {
    tops[k] = Math.min(tops[k], floor - ordered[k].height);
    floor = tops[k] - APART;
  }
  return ordered.map((slip, k) => [slip, tops[k]]);
}

function wanted(slip, height) {
  return (slip.at ? slip.at.y : height) - slip.height / 2;
}

function free(room, side) {
  return room.height - room.taken[side];
}

/** The height that the slips of a side may use: the corner too, when there are many. */
function high(room, side, slips) {
  const need = slips.reduce((sum, slip) => sum + slip.height + APART, APART);
  return need > free(room, side) ? room.height : free(room, side);
}

function across(slip, side, drawn, room) {
  if (side === "left") return Math.max(APART, drawn.left - BESIDE - slip.width);
  return Math.min(room.width - APART - slip.width, drawn.right + BESIDE);
}
