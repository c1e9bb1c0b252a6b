// Five things to try. A step is done when it was done on this page, by whomever the reader is just then.
import { make } from "/page/draw.js";
import { act, nameOf, store, watch } from "/page/store.js";
import { language, t } from "/page/words.js";

const COMING = /coming|\bvoy\b|^voy/i;
const STEPS = [
  { key: "start", who: 0, done: (a) => a.do === "say" && /^\/potluck\b/i.test(a.text) },
  { key: "answer", who: 1, button: (label) => COMING.test(label), done: (a) => a.do === "press" && COMING.test(a.label) },
  { key: "bring", who: 2, reply: true, done: (a) => a.do === "say" && (a.reply || /^\/bring\b/i.test(a.text)) },
  { key: "needs", who: 3, link: true, done: (a) => a.do === "press" && a.inside },
  { key: "move", done: (a) => a.do === "move" },
];
const done = new Set();

export function setUpTour(list, count, { become, compose, board, focusButton, focusClock }) {
  function person(step) {
    const people = [...store.people.keys()];
    return people[Math.min(step.who, people.length - 1)];
  }

  async function go(step) {
    if (step.key === "move") { focusClock(); return; }
    become(person(step));
    if (step.button) focusButton(step.button);
    else if (step.link) {
      const inside = (board()?.buttons || []).flat().filter((b) => b.opens === "private").map((b) => b.label);
      focusButton((label) => inside.includes(label));
    } else {
      // Whoever reads the page in another language than the bot's usual one has it speak that language first.
      if (step.key === "start" && language !== "en") await act({ do: "say", chat: store.group, text: `/settings language ${language}` });
      compose(t(`try-${step.key}-say`), { reply: step.reply ? board() : null });
    }
  }

  function drawStep(step, current) {
    const item = make("li", { class: done.has(step.key) ? "done" : current ? "current" : "", "aria-current": current ? "step" : null }, make("b", {}, t(`try-${step.key}`)));
    if (done.has(step.key)) {
      item.append(make("span", { class: "hide" }, ` (${t("try-is-done")})`), make("p", {}, t(`try-${step.key}-then`)));
      return item;
    }
    if (!current) return item;
    item.append(make("p", {}, t(`try-${step.key}-how`)));
    const writes = step.key === "start" || step.reply;
    if (writes) item.append(make("p", { class: "say" }, t(`try-${step.key}-say`)));
    const label = step.key === "move" ? t("try-clock") : t(writes ? "try-write" : "try-go", { name: nameOf(person(step)) });
    item.append(make("p", {}, make("button", { type: "button", class: "main", onclick: () => go(step) }, label), " ",
      make("button", { type: "button", onclick: () => finish(step) }, t("try-skip"))));
    return item;
  }

  function draw() {
    // Where a potluck is under way already, the first step has been taken.
    if (board()) done.add("start");
    count.textContent = done.size === STEPS.length ? t("try-done") : t("try-count", { n: done.size, of: STEPS.length });
    const current = STEPS.find((step) => !done.has(step.key));
    const focused = list.contains(document.activeElement);
    list.replaceChildren(...STEPS.map((step) => drawStep(step, step === current)));
    if (focused) list.querySelector("button")?.focus();
  }

  function finish(step) { done.add(step.key); draw(); }

  watch((what, detail) => {
    if (what === "loaded") draw();
    if (what === "event" && detail.kind === "pin") draw();
    if (what !== "acted") return;
    const hit = STEPS.filter((step) => !done.has(step.key) && step.done(detail));
    if (hit.length) { hit.forEach((step) => done.add(step.key)); draw(); }
  });
  return { draw };
}
