// Lengths in words of the tape, as the server says them (body/tape.py); the contract is tested over its own output.

const IN = 25.4;
const SAME = 1e-6;

/** @param {number} mm  @param {"cm"|"in"} units */
export function sayLength(mm, units) {
  return units === "in" ? inches(mm) : `${plain(mm / 10, 2)} cm`;
}

/** A number with at most so many decimals and no needless noughts. */
export function plain(number, decimals) {
  const said = number.toFixed(decimals).replace(/\.?0+$/, "");
  return said === "-0" ? "0" : said;
}

function inches(mm) {
  const sixteenths = Math.floor((Math.abs(mm) / IN) * 16 + 0.5 + SAME);
  const whole = Math.floor(sixteenths / 16);
  let over = sixteenths % 16;
  let under = 16;
  while (over && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const words = [];
  if (whole || !over) words.push(String(whole));
  if (over) words.push(`${over}/${under}`);
  return `${mm < 0 && sixteenths ? "-" : ""}${words.join(" ")} in`;
}

/**
 * The length that was typed, in mm; null where it is not understood here (the server has the last word).
 * @param {string} text  @param {"cm"|"in"} units  what a bare number means
 */
export function readLength(text, units) {
  const found = /^\s*(\d*(?:[.,]\d+)?)(?:[ -]*(\d+)\/(\d+))?\s*(mm|cm|m|in|")?\s*$/.exec(text.toLowerCase());
  if (!found || (!found[1] && !found[2])) return null;
  const number = Number((found[1] || "0").replace(",", ".")) + (found[2] ? found[2] / found[3] : 0);
  const unit = found[4] || units;
  return number * { mm: 1, cm: 10, m: 1000, in: IN, '"': IN }[unit];
}

/** The next mark of the tape, up or down: half centimetres, or quarters of an inch. */
export function nudge(mm, steps, units) {
  const mark = units === "in" ? IN / 4 : 5;
  const at = mm / mark;
  const from = steps > 0 ? Math.floor(at + 1e-6) : Math.ceil(at - 1e-6);
  return Math.max(0, (from + steps) * mark);
}
