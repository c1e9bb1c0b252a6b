// Messages as elements. Text from people is set as text; formatted text comes escaped from the room.
import { act, nameOf, store } from "/page/store.js";
import { t } from "/page/words.js";

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

// `me` is whose eyes the message is seen with: whose own messages can be changed, who presses its buttons.
export function drawMessage(message, { me, onReply, onEdit, onStart, board = false }) {
  if (message.service) return make("p", { class: "note", "data-key": message.key }, message.text);
  const bot = message.from === store.bot.id;
  const head = make("div", { class: "head" }, make("b", { dir: "auto" }, nameOf(message.from)));
  if (message.topic) head.append(make("i", {}, message.topic));
  if (message.edited && !board) head.append(make("i", {}, t("changed")));
  const body = make("div", {}, board ? null : head);
  if (message.reply && !board) body.append(make("div", { class: "quote", dir: "auto" }, t("told", { name: nameOf(message.reply.from), text: message.reply.text })));
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
  if (message.buttons.length) body.append(drawButtons(message, me));
  body.append(drawTools(message, me, { onReply, onEdit }));
  const at = new Date(message.at);
  const time = make("time", { datetime: message.at, title: message.at.replace("T", " ") }, message.at.slice(11, 16));
  if (Number.isNaN(at.valueOf())) time.textContent = "";
  if (board) return body;
  return make("article", { class: bot ? "msg bot" : "msg", "data-key": message.key }, time, body);
}

function drawFile(file) {
  if (!file.picture) return make("div", {}, make("a", { href: file.url, target: "_blank", rel: "noopener" }, `${file.name} (${Math.ceil(file.size / 1024)} kB)`));
  const image = make("img", { src: file.url, alt: t("picture", { name: file.name }), width: file.width, height: file.height, loading: "lazy" });
  return make("div", { class: "pic" }, make("a", { href: file.url, target: "_blank", rel: "noopener" }, image));
}

function drawButtons(message, me) {
  const box = make("div", { class: "press", role: "group", "aria-label": t("buttons") });
  message.buttons.forEach((row, number) => {
    if (number) box.append(make("span", { class: "break" }));
    for (const button of row) {
      box.append(make("button", { type: "button", "data-row": button.row, "data-column": button.column, onclick: () => press(message, button, me()) }, button.label));
    }
  });
  return box;
}

async function press(message, button, who) {
  if (button.copy) await navigator.clipboard?.writeText(button.copy).catch(() => undefined);
  if (button.opens && button.opens !== "private") window.open(button.opens, "_blank", "noopener");
  const [chat] = message.key.split("/");
  await act({ do: "press", who, chat: Number(chat), message: message.id, row: button.row, column: button.column, label: button.label, inside: button.opens === "private" });
}

const FACES = ["👍", "❤", "🎉"];

function drawTools(message, me, { onReply, onEdit }) {
  const tools = make("div", { class: "tools" });
  const chat = Number(message.key.split("/")[0]);
  const text = (message.text || message.file?.name || "").slice(0, 40);
  for (const reaction of message.reactions) {
    const has = reaction.by.includes(me());
    const name = reaction.by.map(nameOf).join(", ");
    tools.append(make("button", {
      type: "button", class: "face", title: name, "aria-label": t("reacted", { text: reaction.emoji, name }),
      onclick: () => act({ do: "react", who: me(), chat, message: message.id, emoji: has ? null : reaction.emoji }),
    }, `${reaction.emoji} ${reaction.by.length}`));
  }
  tools.append(make("button", { type: "button", "aria-label": t("reply-to", { text }), onclick: () => onReply(message) }, t("reply")));
  const faces = make("span", { hidden: true });
  for (const face of FACES) {
    faces.append(make("button", { type: "button", class: "face", "aria-label": t("react-with", { text: face }), onclick: () => { faces.hidden = true; act({ do: "react", who: me(), chat, message: message.id, emoji: face }); } }, face));
  }
  tools.append(make("button", { type: "button", "aria-label": t("react-to", { text }), onclick: () => { faces.hidden = !faces.hidden; } }, t("react")), faces);
  if (message.from === me()) {
    tools.append(make("button", { type: "button", "aria-label": t("edit-it", { text }), onclick: () => onEdit(message) }, t("edit")));
    tools.append(make("button", { type: "button", "aria-label": t("delete-it", { text }), onclick: () => act({ do: "delete", who: me(), chat, message: message.id }) }, t("delete")));
  }
  return tools;
}
