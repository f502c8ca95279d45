// <draft-drawing>: a drawing that is zoomed and pushed like paper, and redrawn while the view stays.

import { fit, placeAt, pushed, seenAt, viewBox, zoomed } from "./view.js";

const STEP = 60; // px a key pushes the paper
const NEARER = 0.8;
const LEAST = 12; // mm of bare paper round what is looked at
const LETTER = { ne: [14, -14], nw: [-14, -14], se: [14, 12], sw: [-14, 12] }; // px from a point to the middle of its letter
const CLICK = 5; // px; a pointer that moved less did not push

class DraftDrawing extends HTMLElement {
  #view = null;
  #fitted = true;
  #fingers = new Map();
  #pushed = 0;
  isUnfolded = false; // whether the whole of each folded piece is looked at too
  bare = { left: 30, right: 30, top: 30, bottom: 30 };

  connectedCallback() {
    this.addEventListener("wheel", (event) => this.#wheel(event), { passive: false });
    this.addEventListener("pointerdown", (event) => this.#down(event));
    this.addEventListener("pointermove", (event) => this.#move(event));
    for (const end of ["pointerup", "pointercancel"]) this.addEventListener(end, (event) => this.#up(event));
    this.addEventListener("keydown", (event) => this.#key(event));
    new ResizeObserver(() => this.#resized()).observe(this);
  }

  get svg() {
    return this.querySelector("svg");
  }

  get room() {
    return { width: this.clientWidth || 1, height: this.clientHeight || 1 };
  }

  get view() {
    return this.#view ?? fit(this.#box(), this.room, this.bare);
  }

  /** Takes in a new drawing; the view stays where it is, and so does what is kept of the old drawing. */
  show(text, kept = null) {
    const fresh = drawingIn(text);
    this.svg.replaceChildren(...fresh.childNodes, ...(kept ? [kept] : []));
    this.dataset.box = fresh.getAttribute("viewBox");
    this.dispatchEvent(new CustomEvent("drawn"));
  }

  whole() {
    this.#fitted = true;
    this.#view = fit(this.#box(), this.room, this.bare);
    this.#apply();
  }

  nearer(factor, pointer = { x: this.room.width / 2, y: this.room.height / 2 }) {
    this.#set(zoomed(this.view, factor, pointer, this.room));
  }

  /** Where a place in mm is seen, in px from the upper left corner. */
  seenAt(x, y) {
    return seenAt(this.view, this.room, x, y);
  }

  /** Where a named point is seen, in px; null where it is not drawn. */
  seenPoint(name) {
    const point = name && this.querySelector(`.point[data-name="${CSS.escape(name)}"]`);
    return point ? this.seenAt(Number(point.getAttribute("cx")), Number(point.getAttribute("cy"))) : null;
  }

  /** The middle of every letter and every point, and how far round it a pinned number would cover it, in px. */
  lettered() {
    const points = [...this.querySelectorAll(".point")].map((one) => ({ ...this.seenPoint(one.dataset.name), clear: 17 }));
    return points.concat([...this.querySelectorAll(".letter")].map((letter) => {
      const at = this.seenAt(Number(letter.getAttribute("x")), Number(letter.getAttribute("y")));
      const [across, down] = LETTER[[...letter.classList].find((side) => side in LETTER)];
      return { x: at.x + across, y: at.y + down, clear: 24 };
    }));
  }

  /** The place in mm under a pointer event. */
  placeOf(event) {
    const at = this.#pointer(event);
    return placeAt(this.view, this.room, at.x, at.y);
  }

  /** What the drawing itself covers, in px. */
  drawn() {
    const box = this.#box();
    const from = this.seenAt(box.x, box.y);
    const to = this.seenAt(box.x + box.width, box.y + box.height);
    return { left: from.x, right: to.x, top: from.y, bottom: to.y };
  }

  #box() {
    const said = this.dataset.box ?? (this.dataset.box = this.svg.getAttribute("viewBox"));
    const [x, y, width, height] = said.split(" ").map(Number);
    const box = { x, y, width, height };
    return this.isUnfolded ? around(box, this.svg.querySelector(".unfolded")?.getBBox()) : box;
  }

  #set(view) {
    this.#fitted = false;
    this.#view = view;
    this.#apply();
  }

  #apply() {
    if (!this.#view) this.#view = fit(this.#box(), this.room, this.bare);
    this.svg.setAttribute("viewBox", viewBox(this.#view, this.room).join(" "));
    this.svg.style.setProperty("--px", this.#view.perPixel);
    this.dispatchEvent(new CustomEvent("seen"));
  }

  #resized() {
    if (this.#fitted) this.whole();
    else this.#apply();
  }

  #pointer(event) {
    const box = this.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }

  #wheel(event) {
    event.preventDefault();
    this.nearer(Math.exp(Math.max(-60, Math.min(60, event.deltaY)) * 0.006), this.#pointer(event));
  }

  #down(event) {
    if (event.button) return;
    this.#fingers.set(event.pointerId, this.#pointer(event));
    this.#pushed = 0;
  }

  #move(event) {
    const before = this.#fingers.get(event.pointerId);
    if (!before) return;
    const now = this.#pointer(event);
    if (this.#fingers.size === 2) this.#pinch(event.pointerId, before, now);
    else this.#push(event, before, now);
    this.#fingers.set(event.pointerId, now);
  }

  #push(event, before, now) {
    this.#pushed += Math.hypot(now.x - before.x, now.y - before.y);
    if (this.#pushed < CLICK) return;
    if (!this.hasPointerCapture(event.pointerId)) this.setPointerCapture(event.pointerId);
    this.#set(pushed(this.view, now.x - before.x, now.y - before.y));
  }

  #pinch(id, before, now) {
    const [other] = [...this.#fingers].filter(([finger]) => finger !== id).map(([, at]) => at);
    const was = Math.hypot(before.x - other.x, before.y - other.y);
    const is = Math.hypot(now.x - other.x, now.y - other.y);
    this.#pushed = CLICK;
    if (is > 0) this.nearer(was / is, { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 });
  }

  #up(event) {
    if (this.#fingers.delete(event.pointerId) && this.#pushed < CLICK && event.type === "pointerup") {
      const under = document.elementFromPoint(event.clientX, event.clientY);
      const named = under?.closest("[data-name],[data-finding]");
      this.dispatchEvent(new CustomEvent("touched", { detail: { named, place: this.placeOf(event) } }));
    }
  }

  #key(event) {
    if (event.target !== this || event.ctrlKey || event.metaKey || event.altKey) return;
    const moves = { ArrowLeft: [STEP, 0], ArrowRight: [-STEP, 0], ArrowUp: [0, STEP], ArrowDown: [0, -STEP] };
    if (event.key in moves) this.#set(pushed(this.view, ...moves[event.key]));
    else if (event.key === "+" || event.key === "=") this.nearer(NEARER);
    else if (event.key === "-") this.nearer(1 / NEARER);
    else if (event.key === "0") this.whole();
    else return;
    event.preventDefault();
  }
}

/** A box that has another in it too. */
function around(box, other) {
  if (!other?.width) return box;
  const x = Math.min(box.x, other.x - LEAST);
  const y = Math.min(box.y, other.y - LEAST);
  const right = Math.max(box.x + box.width, other.x + other.width + LEAST);
  const low = Math.max(box.y + box.height, other.y + other.height + LEAST);
  return { x, y, width: right - x, height: low - y };
}

/** The server's own drawing, read as a drawing: no script in it would run. */
function drawingIn(text) {
  const drawing = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  if (drawing.localName !== "svg") throw new Error("no drawing came");
  return document.adoptNode(drawing);
}

customElements.define("draft-drawing", DraftDrawing);
