// While a search goes on, the page asks how far it is, and shows each better lay as it comes.

import { NOT_IN, comeIn } from "./answers.js";

const OFTEN = 500; // ms between two questions
const going = document.getElementById("going");

async function ask() {
  const { recipe, search, query, count } = going.dataset;
  const link = `/cloth/${encodeURIComponent(recipe)}/search/${search}.json?${query}&seen=${count}`;
  const answer = await fetch(link).catch(() => null);
  if (answer?.status === NOT_IN) return comeIn(document.getElementById("silence"));
  if (answer?.status === 404) return location.reload(); // the workroom was started anew, and the page says so
  if (!answer?.ok) return setTimeout(ask, 4 * OFTEN);
  const told = await answer.json();
  going.querySelector("progress").value = told.share;
  going.dataset.count = told.count;
  if (told.html !== undefined) show(told.html);
  if (!told.over) return setTimeout(ask, OFTEN);
  going.hidden = true;
  document.getElementById("setting-off").hidden = false;
  return 0;
}

function show(html) {
  const fresh = new DOMParser().parseFromString(html, "text/html"); // from our own template, which escapes all words
  document.getElementById("found").replaceChildren(...fresh.body.childNodes);
  document.getElementById("told").textContent = document.querySelector(".to-buy")?.textContent ?? "";
}

if (going) ask();
