// While searches go on, the page asks how far each is, and shows each better lay as it comes.

import { NOT_IN, comeIn } from "./answers.js";

const OFTEN = 500; // ms between two questions

async function ask(going) {
  const { recipe, search, query, cloth, count } = going.dataset;
  const link = `/cloth/${encodeURIComponent(recipe)}/search/${search}.json?${query}&on-cloth=${encodeURIComponent(cloth)}&seen=${count}`;
  const answer = await fetch(link).catch(() => null);
  if (answer?.status === NOT_IN) return comeIn(document.getElementById("silence"));
  if (answer?.status === 404) return location.reload(); // the workroom was started anew, and the page says so
  if (!answer?.ok) return setTimeout(ask, 4 * OFTEN, going);
  const told = await answer.json();
  going.querySelector("progress").value = told.share;
  going.dataset.count = told.count;
  const section = going.closest(".one-cloth");
  if (told.html !== undefined) show(section, told);
  if (!told.over) return setTimeout(ask, OFTEN, going);
  going.hidden = true;
  section.querySelector(".setting-off").hidden = false;
  return 0;
}

function show(section, told) {
  put(section.querySelector(".found"), told.html);
  put(document.getElementById("list"), told.list);
  const name = section.querySelector("h2")?.textContent;
  const bought = section.querySelector(".to-buy")?.textContent ?? "";
  document.getElementById("told").textContent = name ? `${name}: ${bought}` : bought;
}

function put(place, html) {
  const fresh = new DOMParser().parseFromString(html, "text/html"); // from our own template, which escapes all words
  place.replaceChildren(...fresh.body.childNodes);
}

document.querySelectorAll(".going").forEach(ask);
