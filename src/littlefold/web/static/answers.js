// What is said where the workroom does not answer, or no longer to this visitor.

export const NOT_IN = 401;
export const SILENT = "The workroom does not answer. Is its window still open?";
export const OVER = "Your time in the workroom is over.";

/** Puts the end of the session into words, with a way through the door and back to a page. */
export function comeIn(place, back = location.pathname + location.search) {
  const door = document.createElement("a");
  door.href = `/door?to=${encodeURIComponent(back)}`;
  door.textContent = "Come in again";
  place.replaceChildren(`${OVER} `, door, ", and you are back here.");
}
