// The page's labels, in the language the reader chose. They come from the bot's own texts.
let words = {};
export let language = "en";

export async function loadWords(wanted) {
  const said = await (await fetch(`/room/words?lang=${encodeURIComponent(wanted)}`)).json();
  words = said.words;
  language = said.language;
  document.documentElement.lang = language;
  for (const element of document.querySelectorAll("[data-t]")) element.textContent = t(element.dataset.t);
  for (const element of document.querySelectorAll("[data-t-label]")) element.setAttribute("aria-label", t(element.dataset.tLabel));
}

export function t(key, facts = {}) {
  return (words[key] ?? key).replace(/\{(\w+)\}/g, (whole, name) => (name in facts ? facts[name] : whole));
}
