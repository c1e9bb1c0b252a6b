// Messages as elements. Text from people is set as text; formatted text comes escaped from the room.
import { act, nameOf, store } from "/page/store.js";

export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name === "class") element.className = value;
    else if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (value !== undefined && value !== null && value !== false) element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children.filter((c) => c !== null && c !== undefined));
  return element;
}

export function drawMessage(message, { onReply, onEdit, onStart, board = false }) {
  if (message.service) return make("p", { class: "note", "data-key": message.key }, message.text);
  const bot = message.from === store.bot.id;
  const mine = message.from === store.me;
  const head = make("div", { class: "head" }, make("b", { dir: "auto" }, nameOf(message.from)));
  if (message.topic) head.append(make("i", {}, message.topic));
  if (message.edited && !board) head.append(make("i", {}, "changed"));
  const body = make("div", {}, board ? null : head);
  if (message.reply && !board) body.append(make("div", { class: "quote", dir: "auto" }, `${nameOf(message.reply.from)}: ${message.reply.text}`));
  if (message.file) body.append(drawFile(message.file));
  if (message.html || message.text) {
    const text = make("div", { class: "text", dir: "auto" });
    if (message.html) text.innerHTML = message.html;
    else text.textContent = message.text;
    for (const link of text.querySelectorAll("a[data-start]")) {
      link.addEventListener("click", (event) => { event.preventDefault(); onStart(link.dataset.start); });
    }
    body.append(text);
  }
  if (message.buttons.length) body.append(drawButtons(message));
  body.append(drawTools(message, mine, { onReply, onEdit }));
  const at = new Date(message.at);
  const time = make("time", { datetime: message.at, title: message.at.replace("T", " ") }, message.at.slice(11, 16));
  if (Number.isNaN(at.valueOf())) time.textContent = "";
  if (board) return body;
  return make("article", { class: bot ? "msg bot" : "msg", "data-key": message.key }, time, body);
}

function drawFile(file) {
  if (!file.picture) return make("div", {}, make("a", { href: file.url, target: "_blank", rel: "noopener" }, `${file.name} (${Math.ceil(file.size / 1024)} kB)`));
  const image = make("img", { src: file.url, alt: `Picture: ${file.name}`, width: file.width, height: file.height, loading: "lazy" });
  return make("div", { class: "pic" }, make("a", { href: file.url, target: "_blank", rel: "noopener" }, image));
}

function drawButtons(message) {
  const box = make("div", { class: "press", role: "group", "aria-label": "Buttons of this message" });
  message.buttons.forEach((row, number) => {
    if (number) box.append(make("span", { class: "break" }));
    for (const button of row) {
      box.append(make("button", { type: "button", "data-row": button.row, "data-column": button.column, onclick: () => press(message, button) }, button.label));
    }
  });
  return box;
}

async function press(message, button) {
  if (button.copy) await navigator.clipboard?.writeText(button.copy).catch(() => undefined);
  if (button.opens && button.opens !== "private") window.open(button.opens, "_blank", "noopener");
  const [chat] = message.key.split("/");
  await act({ do: "press", chat: Number(chat), message: message.id, row: button.row, column: button.column, label: button.label });
}

const FACES = ["👍", "❤", "🎉"];

function drawTools(message, mine, { onReply, onEdit }) {
  const tools = make("div", { class: "tools" });
  const chat = Number(message.key.split("/")[0]);
  const short = (message.text || "picture").slice(0, 40);
  for (const reaction of message.reactions) {
    const has = reaction.by.includes(store.me);
    const names = reaction.by.map(nameOf).join(", ");
    tools.append(make("button", {
      type: "button", class: "face", title: names, "aria-label": `${reaction.emoji} by ${names}`,
      onclick: () => act({ do: "react", chat, message: message.id, emoji: has ? null : reaction.emoji }),
    }, `${reaction.emoji} ${reaction.by.length}`));
  }
  tools.append(make("button", { type: "button", "aria-label": `Reply to: ${short}`, onclick: () => onReply(message) }, "Reply"));
  const faces = make("span", { hidden: true });
  for (const face of FACES) {
    faces.append(make("button", { type: "button", class: "face", "aria-label": `React with ${face}`, onclick: () => { faces.hidden = true; act({ do: "react", chat, message: message.id, emoji: face }); } }, face));
  }
  tools.append(make("button", { type: "button", "aria-label": `React to: ${short}`, onclick: () => { faces.hidden = !faces.hidden; } }, "React"), faces);
  if (mine) {
    tools.append(make("button", { type: "button", "aria-label": `Edit: ${short}`, onclick: () => onEdit(message) }, "Edit"));
    tools.append(make("button", { type: "button", "aria-label": `Delete: ${short}`, onclick: () => act({ do: "delete", chat, message: message.id }) }, "Delete"));
  }
  return tools;
}
