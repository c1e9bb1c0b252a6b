// Puts the page together: panes, composing, clock, toasts.
import { drawMessage, make } from "/page/draw.js";
import { act, listen, load, loadDecisions, nameOf, store, watch } from "/page/store.js";
import { setUpTour } from "/page/tour.js";

const $ = (selector) => document.querySelector(selector);
const aims = { group: null, private: null };
const chatIn = { group: () => store.chats.get(store.group), private: () => store.chats.get(store.me) };
const SENDS = [["", "Send …"], ["photo", "a photo"], ["voice", "a voice message"], ["sticker", "a sticker"], ["location", "a location"]];

// --- panes ---

function hooks(pane) {
  return {
    onReply: (message) => aim(pane, { message, edit: false }),
    onEdit: (message) => aim(pane, { message, edit: true }),
    onStart: (payload) => { show("private"); act({ do: "start", payload }); },
  };
}

// The pinned board stands above the chat; in the chat one line says so.
function drawIn(pane, message) {
  if (pane === "group" && message.key === chatIn.group().pinned.at(-1)) {
    return make("p", { class: "note", "data-key": message.key }, "The board, pinned above");
  }
  return drawMessage(message, hooks(pane));
}

function drawPane(pane) {
  const chat = chatIn[pane]();
  const log = $(`#${pane}-log`);
  const drawn = chat ? [...chat.messages.values()].map((m) => drawIn(pane, m)) : [];
  if (!drawn.length) drawn.push(make("p", { class: "empty" }, pane === "group" ? "Nobody has said anything yet." : "Nothing has been said here yet. What you write here only the bot reads."));
  log.replaceChildren(...drawn);
  log.scrollTop = log.scrollHeight;
  drawHead(pane);
  drawKeys(pane);
}

function drawHead(pane) {
  const chat = chatIn[pane]();
  if (!chat) return;
  if (pane === "group") {
    $("#group-title").textContent = chat.title;
    const members = chat.members.filter((id) => id !== store.bot.id).length;
    $("#group-about").textContent = `${members} people${chat.bot_here ? "" : ", the bot is not here"}`;
    drawBoard();
  } else {
    $("#private-title").textContent = `${nameOf(store.me)} and the bot`;
    $("#private-about").textContent = chat.blocked ? "stopped" : chat.started ? "" : "not opened yet";
    const form = document.querySelector("form[data-pane=private]");
    form.querySelector(".begin").hidden = chat.started && !chat.blocked;
    for (const part of form.querySelectorAll("textarea, .row")) part.hidden = !chat.started || chat.blocked;
  }
}

function drawBoard() {
  const chat = chatIn.group();
  const pinned = chat && chat.pinned.length ? chat.messages.get(chat.pinned.at(-1)) : null;
  const board = $("#board");
  board.hidden = !pinned;
  if (!pinned) return;
  const spot = [...board.querySelectorAll("button, a")].indexOf(document.activeElement);
  board.lastElementChild.replaceChildren(drawMessage(pinned, { ...hooks("group"), board: true }));
  if (spot >= 0) board.querySelectorAll("button, a")[spot]?.focus();
}

function drawKeys(pane) {
  const chat = chatIn[pane]();
  const keys = document.querySelector(`form[data-pane="${pane}"] .keys`);
  keys.replaceChildren();
  if (!chat) return;
  const last = [...chat.messages.values()].filter((m) => m.prompt && (m.prompt.keyboard || m.prompt.remove_keyboard)).at(-1);
  for (const row of last?.prompt.keyboard || []) {
    for (const key of row) {
      const text = typeof key === "string" ? key : key.text;
      keys.append(make("button", { type: "button", onclick: () => act({ do: "say", chat: chat.id, text }) }, text));
    }
  }
}

function redraw(pane, message, fresh) {
  const log = $(`#${pane}-log`);
  const near = log.scrollHeight - log.scrollTop - log.clientHeight < 120;
  const old = log.querySelector(`[data-key="${message.key}"]`);
  const focused = old?.contains(document.activeElement) ? document.activeElement : null;
  const spot = focused ? [...old.querySelectorAll("button, a")].indexOf(focused) : -1;
  const drawn = drawIn(pane, message);
  if (fresh) drawn.classList.add("fresh");
  if (old) old.replaceWith(drawn);
  else { log.querySelector(".empty")?.remove(); log.append(drawn); }
  if (spot >= 0) (drawn.querySelectorAll("button, a")[spot] || drawn.querySelector("button"))?.focus();
  if (near && !old) log.scrollTop = log.scrollHeight;
}

// --- composing ---

function aim(pane, target) {
  aims[pane] = target;
  const form = document.querySelector(`form[data-pane="${pane}"]`);
  const line = form.querySelector(".aim");
  line.hidden = !target;
  const area = form.querySelector("textarea");
  if (target) {
    line.firstElementChild.textContent = `${target.edit ? "Changing" : "Replying to " + nameOf(target.message.from)}: ${target.message.text.slice(0, 60)}`;
    if (target.edit) area.value = target.message.text;
    area.focus();
  }
}

async function send(pane) {
  const area = $(`#${pane}-text`);
  const text = area.value.trim();
  const chat = chatIn[pane]();
  if (!text || !chat) return;
  const target = aims[pane];
  const here = target ? Number(target.message.key.split("/")[0]) : chat.id;
  const done = target?.edit
    ? await act({ do: "edit", chat: here, message: target.message.id, text })
    : await act({ do: "say", chat: chat.id, text, reply: target?.message.id });
  if (done) { area.value = ""; aim(pane, null); area.focus(); }
}

function fillMenus() {
  for (const pane of ["group", "private"]) {
    const commands = (store.menus[store.me] || {})[pane] || [];
    $(`#${pane}-menu`).replaceChildren(make("option", { value: "" }, "Commands …"), ...commands.map((c) => make("option", { value: c.command }, `/${c.command} – ${c.description}`)));
    $(`#${pane}-send`).replaceChildren(...SENDS.map(([value, label]) => make("option", { value }, label)));
  }
}

for (const form of document.querySelectorAll("form.write")) {
  const pane = form.dataset.pane;
  const area = form.querySelector("textarea");
  form.addEventListener("submit", (event) => { event.preventDefault(); send(pane); });
  area.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && !event.shiftKey && !event.isComposing) { event.preventDefault(); send(pane); }
    if (event.key === "Escape") aim(pane, null);
  });
  form.querySelector(".aim button").addEventListener("click", () => { aim(pane, null); area.focus(); });
  form.querySelector(".menu").addEventListener("change", (event) => {
    if (event.target.value) { area.value = `/${event.target.value} `; area.focus(); }
    event.target.value = "";
  });
  form.querySelector(".send").addEventListener("change", (event) => {
    if (event.target.value) act({ do: "send", chat: chatIn[pane]().id, what: event.target.value });
    event.target.value = "";
  });
  form.querySelector(".begin")?.addEventListener("click", () => act({ do: "start" }));
}

// --- who you are ---

function drawWho() {
  const box = $("#who");
  for (const label of box.querySelectorAll("label")) label.remove();
  const admins = chatIn.group()?.admins || [];
  for (const [id, name] of store.people) {
    const radio = make("input", { type: "radio", name: "who", value: id, onchange: () => become(id) });
    radio.checked = id === store.me;
    box.append(make("label", {}, radio, make("span", { dir: "auto" }, name, admins.includes(id) ? " ★" : "")));
    if (admins.includes(id)) radio.setAttribute("aria-label", `${name}, group admin`);
  }
}

function become(id) {
  store.me = id;
  for (const radio of document.querySelectorAll("#who input")) radio.checked = Number(radio.value) === id;
  aim("group", null);
  aim("private", null);
  fillMenus();
  drawPane("group");
  drawPane("private");
}

function show(view) {
  $("main").dataset.view = view;
  for (const tab of document.querySelectorAll(".tabs button")) tab.setAttribute("aria-pressed", String(tab.dataset.show === view));
  if (view === "private") $("#news").hidden = true;
  for (const pane of ["group", "private"]) { const log = $(`#${pane}-log`); log.scrollTop = log.scrollHeight; }
}
for (const tab of document.querySelectorAll(".tabs button")) tab.addEventListener("click", () => show(tab.dataset.show));

// --- clock ---

let clockNow = null;
function drawClock(clock) {
  clockNow = clock.now;
  const wall = new Date(clock.now.slice(0, 19) + "Z");
  const text = wall.toLocaleString("en", { timeZone: "UTC", weekday: "short", day: "numeric", month: "short", year: "numeric", hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  $("#now").textContent = text;
  $("#now").dateTime = clock.now;
  $("#now").title = clock.zone;
  const target = $("#target");
  target.min = clock.now.slice(0, 16);
  if (!target.value || target.value < target.min) target.value = target.min;
}

async function move(how) {
  await act({ do: "move", ...how });
}
for (const button of document.querySelectorAll("[data-move]")) {
  button.addEventListener("click", () => move(button.dataset.move === "next" ? { to: "next" } : { by_min: Number(button.dataset.move) }));
}
$("#clock").addEventListener("submit", (event) => { event.preventDefault(); if ($("#target").value) move({ to: $("#target").value }); });

// --- toasts and decisions ---

function toast(text) {
  if (!text) return;
  const note = make("div", { class: "toast" }, text);
  $("#toasts").append(note);
  setTimeout(() => note.remove(), 6000);
}

function drawDecisions() {
  $("#why").hidden = !store.decisions.length;
  $("#why ul").replaceChildren(...store.decisions.slice(-30).reverse().map((d) => make("li", {}, d.what, make("small", {}, d.why))));
}

let asking = null;
watch((what, detail) => {
  if (what === "loaded") { drawWho(); fillMenus(); drawPane("group"); drawPane("private"); drawDecisions(); }
  if (what === "clock") drawClock(detail);
  if (what === "moving") $("#moving").textContent = detail ? "The clock is moving …" : "";
  if (what === "refused") toast(detail[0].toUpperCase() + detail.slice(1) + ".");
  if (what === "away") $("#moving").textContent = "The room is closed. Start it again to go on.";
  if (what === "decisions") drawDecisions();
  if (what === "message") {
    const pane = detail.chat.id === store.group ? "group" : detail.chat.id === store.me ? "private" : null;
    if (pane) redraw(pane, detail.message, detail.fresh);
    if (pane) drawKeys(pane);
    if (pane === "private" && detail.fresh && $("main").dataset.view !== "private") $("#news").hidden = false;
    const prompt = detail.message.prompt;
    if (pane && detail.fresh && prompt?.force_reply && (!prompt.selective || detail.message.reply?.from === store.me)) aim(pane, { message: detail.message, edit: false });
  }
  if (what === "event") {
    $("#moving").textContent = $("#moving").textContent.startsWith("The room") ? "" : $("#moving").textContent;
    if (detail.kind === "delete") for (const old of document.querySelectorAll(`[data-key="${detail.key}"]`)) old.remove();
    if (detail.kind === "answer" && detail.to === store.me) {
      if (detail.alert && detail.text) { $("#alert-text").textContent = detail.text; if (!$("#alert").open) $("#alert").showModal(); }
      else toast(detail.text);
      if (detail.start !== null) { show("private"); act({ do: "start", payload: detail.start }); }
    }
    if (detail.chat === store.group && detail.kind === "pin") drawPane("group");
    if (detail.chat === store.group) drawHead("group");
    if (detail.chat === store.me) drawHead("private");
    clearTimeout(asking);
    asking = setTimeout(loadDecisions, 400);
  }
});

setUpTour($("#tour"), $("#tour-count"), {
  become,
  compose(pane, text) { show(pane); const area = $(`#${pane}-text`); area.value = text; area.focus(); },
  focusButton(label) {
    show("group");
    const button = [...document.querySelectorAll("#board button, #group-log .press button")].find((b) => b.textContent.toLowerCase().includes(label));
    if (button) button.focus();
    else toast("There is no such button yet: start a potluck first.");
  },
  focusClock() { $("[data-move=next]").focus(); },
});

listen();
load();
