// What part of the drawing is seen: its middle and how many millimetres a pixel shows.  Nothing here knows the page.

const NEAREST = 0.02; // mm a pixel
const FARTHEST = 20;

/** The view in which a box ({x, y, width, height} in mm) fits a room in pixels, with bare edges left free. */
export function fit(box, room, bare) {
  const wide = Math.max(room.width - bare.left - bare.right, 40);
  const high = Math.max(room.height - bare.top - bare.bottom, 40);
  const perPixel = clamp(Math.max(box.width / wide, box.height / high));
  return {
    x: box.x + box.width / 2 + ((bare.right - bare.left) / 2) * perPixel,
    y: box.y + box.height / 2 + ((bare.bottom - bare.top) / 2) * perPixel,
    perPixel,
  };
}

/** The view nearer (factor < 1) or farther, the place under the pointer staying where it is. */
export function zoomed(view, factor, pointer, room) {
  const perPixel = clamp(view.perPixel * factor);
  const dx = pointer.x - room.width / 2;
  const dy = pointer.y - room.height / 2;
  return {
    x: view.x + dx * (view.perPixel - perPixel),
    y: view.y + dy * (view.perPixel - perPixel),
    perPixel,
  };
}

/** The view moved as if the paper were pushed by so many pixels. */
export function pushed(view, dx, dy) {
  return { ...view, x: view.x - dx * view.perPixel, y: view.y - dy * view.perPixel };
}

export function viewBox(view, room) {
  const width = room.width * view.perPixel;
  const height = room.height * view.perPixel;
  return [view.x - width / 2, view.y - height / 2, width, height];
}

/** Where a place of the drawing (mm) is seen (px). */
export function seenAt(view, room, x, y) {
  return {
    x: room.width / 2 + (x - view.x) / view.perPixel,
    y: room.height / 2 + (y - view.y) / view.perPixel,
  };
}

/** The place of the drawing (mm) under a pixel. */
export function placeAt(view, room, x, y) {
  return {
    x: view.x + (x - room.width / 2) * view.perPixel,
    y: view.y + (y - room.height / 2) * view.perPixel,
  };
}

function clamp(perPixel) {
  return Math.min(Math.max(perPixel, NEAREST), FARTHEST);
}
