// While something is made, the page asks how far it is; when it is over, the page is loaded again and shows it.

import { NOT_IN, comeIn } from "./answers.js";

const OFTEN = 400; // ms between two questions
const going = document.getElementById("going");
const told = document.getElementById("told");

async function ask() {
  const answer = await fetch(going.dataset.asks).catch(() => null);
  if (answer?.status === NOT_IN) return comeIn(told);
  if (answer?.status === 404) return location.reload(); // the workroom was started anew
  if (!answer?.ok) return setTimeout(ask, 4 * OFTEN);
  const { share, over } = await answer.json();
  going.querySelector("progress").value = share;
  return over ? location.reload() : setTimeout(ask, OFTEN);
}

ask();
