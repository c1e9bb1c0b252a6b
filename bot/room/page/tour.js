// Five things to try. A step is done when it was done on this page, by whomever the reader is just then.
import { make } from "/page/draw.js";
import { nameOf, store, watch } from "/page/store.js";

const STEPS = [
  { key: "start", title: "Start a potluck", as: "host", where: "group", say: "/potluck next Saturday 5pm, about 24 people",
    done: (a) => a.do === "say" && /^\/potluck\b/i.test(a.text) },
  { key: "answer", title: "Answer as a guest: press “Coming” on the board", as: "guest", press: "coming",
    done: (a) => a.do === "press" && /coming/i.test(a.label) },
  { key: "bring", title: "Bring something, in your own words", as: "guest", where: "group", say: "/bring slaw for 12",
    done: (a) => a.do === "say" && /\bbring/i.test(a.text) },
  { key: "missing", title: "Ask what is still missing", as: "host", where: "group", say: "/missing",
    done: (a) => a.do === "say" && /^\/missing\b/i.test(a.text) },
  { key: "clock", title: "Move the clock to the next reminder", move: true, done: (a) => a.do === "move" },
];
const done = new Set();

export function setUpTour(list, count, { become, compose, focusButton, focusClock }) {
  function draw() {
    count.textContent = done.size === STEPS.length ? "All five done. The room is yours." : `${done.size} of ${STEPS.length} done`;
    const host = [...store.people.keys()][0];
    const guest = [...store.people.keys()][1] ?? host;
    list.replaceChildren(...STEPS.map((step) => {
      const person = step.as === "host" ? host : guest;
      const item = make("li", { class: done.has(step.key) ? "done" : "" }, step.title);
      if (done.has(step.key)) { item.append(make("span", { class: "hide" }, " (done)")); return item; }
      if (step.say) item.append(make("div", { class: "say" }, step.say));
      const label = step.say ? `Write it as ${nameOf(person)}` : step.press ? `Take me there as ${nameOf(person)}` : "Take me to the clock";
      item.append(make("div", {}, make("button", { type: "button", onclick: () => {
        if (step.move) { focusClock(); return; }
        become(person);
        if (step.say) compose(step.where, step.say);
        else focusButton(step.press);
      } }, label)));
      return item;
    }));
  }
  watch((what, detail) => {
    if (what === "loaded") draw();
    if (what !== "acted") return;
    const hit = STEPS.filter((step) => !done.has(step.key) && step.done(detail));
    if (hit.length) { hit.forEach((step) => done.add(step.key)); draw(); }
  });
}
