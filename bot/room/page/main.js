// Puts the page together: panes, who one is, what is seen at once, the clock.
import { make } from "/page/draw.js";
import { setUpGuide } from "/page/guide.js";
import { Pane } from "/page/pane.js";
import { act, listen, load, loadDecisions, nameOf, store, watch } from "/page/store.js";
import { setUpTour } from "/page/tour.js";
import { language, loadWords, t } from "/page/words.js";

const SIDE_BY_SIDE = 4;
const $ = (selector) => document.querySelector(selector);
const main = $("main");
const slots = [];
let mode = "one";

// --- panes: the group's, the private chat of whoever one is, and three more beside it ---

function build(id, group, who) {
  const section = $("#pane").content.firstElementChild.cloneNode(true);
  section.id = id;
  for (const [part, name] of [["h2", "title"], [".about", "about"], [".log", "log"], ["textarea", "text"], [".menu", "menu"], [".send", "send"]]) {
    section.querySelector(part).id = `${id}-${name}`;
  }
  if (group) {
    section.querySelector(".board").id = "board";
    section.querySelector(".begin").remove();
  } else section.querySelector(".board").remove();
  section.setAttribute("aria-labelledby", `${id}-title`);
  section.querySelector("label").htmlFor = `${id}-text`;
  main.insertBefore(section, $("#side"));
  const pane = new Pane(section, { group, who, hooks: { start: (person, payload) => { show("private"); act({ do: "start", who: person, payload }); } } });
  if (!group) section.querySelector("header").append(make("span", { class: "hands" }));
  return pane;
}

const groupPane = build("group", true, () => store.me);
const privatePanes = Array.from({ length: SIDE_BY_SIDE }, (_, n) =>
  build(n ? `private-${n}` : "private", false, () => (mode === "one" ? store.me : slots[n] ?? store.me)));
const openPanes = () => [groupPane, ...privatePanes.slice(0, mode === "one" ? 1 : Math.min(SIDE_BY_SIDE, slots.length))];

function drawHands() {
  privatePanes.forEach((pane, n) => {
    const hands = pane.section.querySelector(".hands");
    hands.replaceChildren();
    if (mode === "one") return;
    const name = nameOf(pane.who());
    if (store.people.size > SIDE_BY_SIDE) {
      const free = [...store.people].filter(([id]) => id === slots[n] || !slots.includes(id));
      const pick = make("select", { "aria-label": t("who-here"), onchange: (event) => { slots[n] = Number(event.target.value); drawHands(); pane.draw(); } },
        ...free.map(([id, person]) => make("option", { value: id, selected: id === slots[n] }, person)));
      hands.append(pick);
    }
    hands.append(make("button", { type: "button", "aria-pressed": String(store.me === pane.who()), onclick: () => { become(pane.who()); groupPane.area.focus(); } }, t("speak", { name })));
  });
}

function drawAll() {
  main.dataset.mode = mode;
  const open = openPanes();
  for (const pane of [groupPane, ...privatePanes]) pane.section.hidden = !open.includes(pane);
  drawHands();
  for (const pane of open) pane.draw();
}

function see(wanted) {
  mode = wanted;
  for (const button of document.querySelectorAll("[data-mode]")) if (button !== main) button.setAttribute("aria-pressed", String(button.dataset.mode === mode));
  drawAll();
}
for (const button of document.querySelectorAll("button[data-mode]")) button.addEventListener("click", () => see(button.dataset.mode));

function show(view) {
  main.dataset.view = view;
  for (const tab of document.querySelectorAll(".tabs button")) tab.setAttribute("aria-pressed", String(tab.dataset.show === view));
  if (view === "private") $("#news").hidden = true;
  for (const pane of openPanes()) pane.toEnd();
}
for (const tab of document.querySelectorAll(".tabs button")) tab.addEventListener("click", () => show(tab.dataset.show));

// --- who one is ---

function drawWho() {
  const box = $("#who");
  for (const label of box.querySelectorAll("label")) label.remove();
  const admins = groupPane.chat()?.admins || [];
  for (const [id, name] of store.people) {
    const radio = make("input", { type: "radio", name: "who", value: id, onchange: () => become(id) });
    radio.checked = id === store.me;
    if (admins.includes(id)) radio.setAttribute("aria-label", t("admin", { name }));
    box.append(make("label", {}, radio, make("span", { dir: "auto" }, name, admins.includes(id) ? " ★" : "")));
  }
}

function become(id) {
  store.me = id;
  for (const radio of document.querySelectorAll("#who input")) radio.checked = Number(radio.value) === id;
  if (mode === "one") for (const pane of openPanes()) pane.draw();
  else { drawHands(); groupPane.draw(); }
}

// --- language ---

async function speak(wanted) {
  await loadWords(wanted);
  $("#language").value = language;
  if (!store.bot) return;
  drawWho();
  drawAll();
  guide.draw();
  tour.draw();
  drawClock();
  loadDecisions();
}
$("#language").addEventListener("change", (event) => speak(event.target.value));

// --- clock, and work that takes its time ---

let clock = null;
function drawClock() {
  if (!clock) return;
  const wall = new Date(clock.now.slice(0, 19) + "Z");
  const american = language === "en" && /^(America|US|Pacific\/Honolulu)/.test(clock.zone);
  $("#now").textContent = wall.toLocaleString(american ? "en-US" : language === "en" ? "en-GB" : language, {
    timeZone: "UTC", weekday: "short", day: "numeric", month: "short", year: "numeric", hour: american ? "numeric" : "2-digit", minute: "2-digit", hourCycle: american ? "h12" : "h23",
  });
  $("#now").dateTime = clock.now;
  $("#now").title = clock.zone;
  const target = $("#target");
  target.min = clock.now.slice(0, 16);
  if (!target.value || target.value < target.min) target.value = target.min;
}

const working = { away: false, playing: null, moving: false, busy: false };
function drawWork(changed) {
  Object.assign(working, changed);
  const { away, playing, moving, busy } = working;
  const text = away ? t("away") : playing ? t("playing", { n: playing.done, of: playing.of }) : moving ? t("moving") : busy ? t("busy") : "";
  const box = $("#progress");
  box.hidden = !text;
  if (box.firstElementChild.textContent !== text) box.firstElementChild.textContent = text;
  const bar = box.lastElementChild;
  bar.hidden = away;
  bar.setAttribute("aria-label", text);
  if (playing) bar.value = playing.done / playing.of;
  else bar.removeAttribute("value");
  for (const part of $("#clock").querySelectorAll("button, input")) part.disabled = Boolean(moving || playing || away);
}

const move = (how) => act({ do: "move", ...how });
for (const button of document.querySelectorAll("[data-move]")) {
  button.addEventListener("click", async () => {
    await move(button.dataset.move === "next" ? { to: "next" } : { by_min: Number(button.dataset.move) });
    button.focus();
  });
}
$("#clock").addEventListener("submit", (event) => { event.preventDefault(); if ($("#target").value) move({ to: $("#target").value }); });

// --- what the bot says to one person only ---

function toast(text) {
  if (!text) return;
  const note = make("div", { class: "toast" }, text);
  $("#toasts").append(note);
  setTimeout(() => note.remove(), 6000);
}

function answered({ to, text, alert, start }) {
  if (to !== store.me && !(mode === "all" && slots.includes(to))) return;
  const told = text && to !== store.me ? t("told", { name: nameOf(to), text }) : text;
  if (alert && told) { $("#alert-text").textContent = told; if (!$("#alert").open) $("#alert").showModal(); }
  else toast(told);
  if (start !== null) { show("private"); act({ do: "start", who: to, payload: start }); }
}

// --- what happens ---

let asking = null;
watch((what, detail) => {
  if (what === "loaded") {
    document.body.classList.remove("opening");
    const people = [...store.people.keys()];
    slots.splice(0, slots.length, ...[...slots.filter((id) => people.includes(id)), ...people.filter((id) => !slots.includes(id))].slice(0, SIDE_BY_SIDE));
    drawWho();
    drawAll();
    drawWork({ away: false, moving: false, busy: false });
  }
  if (what === "clock") { clock = detail; drawClock(); }
  if (what === "moving" || what === "busy" || what === "playing") drawWork({ [what]: detail });
  if (what === "away") drawWork({ away: true });
  if (what === "refused") toast(detail[0].toUpperCase() + detail.slice(1) + ".");
  if (what === "message") {
    for (const pane of openPanes()) if (pane.chat()?.id === detail.chat.id) pane.take(detail.message, detail.fresh);
    if (detail.chat.id === store.me && detail.fresh && main.dataset.view !== "private") $("#news").hidden = false;
  }
  if (what === "event") {
    const here = openPanes().filter((pane) => pane.chat()?.id === detail.chat);
    if (detail.kind === "delete") for (const pane of here) pane.forget(detail.key);
    if (detail.kind === "answer") answered(detail);
    for (const pane of here) { if (detail.kind === "pin") pane.draw(); else pane.drawHead(); }
    clearTimeout(asking);
    asking = setTimeout(loadDecisions, 400);
  }
});

const compose = (text, { reply = null } = {}) => {
  show("group");
  groupPane.aim(reply ? { message: reply, edit: false } : null);
  groupPane.area.value = text;
  groupPane.area.focus();
};
const guide = setUpGuide({ compose });
const tour = setUpTour($("#tour"), $("#tour-count"), {
  become,
  compose,
  board() { const chat = groupPane.chat(); return chat?.pinned.length ? chat.messages.get(chat.pinned.at(-1)) : null; },
  focusButton(fits) {
    show("group");
    const button = [...document.querySelectorAll("#board button")].find((b) => fits(b.textContent));
    if (button) button.focus();
    else toast(t("try-no-button"));
  },
  focusClock() { $("[data-move=next]").focus(); },
});

speak(navigator.language).then(() => { listen(); load(); });
