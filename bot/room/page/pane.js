// One chat on the page: its log, its pinned board, and writing into it.
import { drawMessage, make } from "/page/draw.js";
import { act, nameOf, store } from "/page/store.js";
import { t } from "/page/words.js";

const SENDS = ["photo", "voice", "sticker", "location"];

export class Pane {
  // `who()` is the person whose chat this is, or who speaks in it; `hooks.show` brings a pane into view.
  constructor(section, { group, who, hooks }) {
    this.section = section;
    this.group = group;
    this.who = who;
    this.hooks = hooks;
    this.aimed = null;
    this.log = section.querySelector(".log");
    this.form = section.querySelector("form");
    this.area = section.querySelector("textarea");
    this.board = section.querySelector(".board");
    this.listenToForm();
    // Whoever reads at the end stays at the end, also when a picture takes its place late.
    this.following = true;
    this.log.addEventListener("scroll", () => { this.following = this.log.scrollHeight - this.log.scrollTop - this.log.clientHeight < 120; });
    this.log.addEventListener("load", () => { if (this.following) this.toEnd(); }, true);
  }

  chat() { return store.chats.get(this.group ? store.group : this.who()); }

  // --- what is seen ---

  parts() {
    return {
      me: this.who,
      onReply: (message) => this.aim({ message, edit: false }),
      onEdit: (message) => this.aim({ message, edit: true }),
      onStart: (payload) => this.hooks.start(this.who(), payload),
    };
  }

  // The pinned board stands above the chat; in the chat one line says so.
  drawIn(message) {
    if (this.group && message.key === this.chat().pinned.at(-1)) return make("p", { class: "note", "data-key": message.key }, t("board-above"));
    return drawMessage(message, this.parts());
  }

  draw() {
    const chat = this.chat();
    const drawn = chat ? [...chat.messages.values()].map((m) => this.drawIn(m)) : [];
    if (!drawn.length) drawn.push(make("p", { class: "empty" }, t(this.group ? "said-nothing" : "private-nothing")));
    this.log.replaceChildren(...drawn);
    this.drawHead();
    this.drawKeys();
    this.fillMenus();
    this.aim(null);
    this.toEnd();
  }

  toEnd() { this.log.scrollTop = this.log.scrollHeight; }

  drawHead() {
    const chat = this.chat();
    if (!chat) return;
    const title = this.section.querySelector("h2");
    const about = this.section.querySelector(".about");
    const name = nameOf(this.who());
    if (this.group) {
      title.textContent = chat.title;
      const members = chat.members.filter((id) => id !== store.bot.id).length;
      about.textContent = t("people", { n: members }) + (chat.bot_here ? "" : ` ${t("no-bot")}`);
      this.drawBoard(chat);
    } else {
      title.textContent = t("private-of", { name });
      about.textContent = chat.blocked ? t("stopped") : chat.started ? "" : t("not-opened");
      this.form.querySelector(".begin").hidden = chat.started && !chat.blocked;
      for (const part of this.form.querySelectorAll("textarea, .row")) part.hidden = !chat.started || chat.blocked;
    }
    const label = t(this.group ? "write-group" : "write-private", { name });
    this.area.placeholder = label;
    this.form.querySelector("label").textContent = label;
    this.log.setAttribute("aria-label", this.group ? t("group-chat") : t("private-of", { name }));
  }

  drawBoard(chat) {
    const pinned = chat.pinned.length ? chat.messages.get(chat.pinned.at(-1)) : null;
    this.board.hidden = !pinned;
    if (!pinned) return;
    const spot = [...this.board.querySelectorAll("button, a")].indexOf(document.activeElement);
    this.board.lastElementChild.replaceChildren(drawMessage(pinned, { ...this.parts(), board: true }));
    if (spot >= 0) this.board.querySelectorAll("button, a")[spot]?.focus();
  }

  drawKeys() {
    const chat = this.chat();
    const keys = this.form.querySelector(".keys");
    keys.replaceChildren();
    if (!chat) return;
    const last = [...chat.messages.values()].filter((m) => m.prompt && (m.prompt.keyboard || m.prompt.remove_keyboard)).at(-1);
    for (const row of last?.prompt.keyboard || []) {
      for (const key of row) {
        const text = typeof key === "string" ? key : key.text;
        keys.append(make("button", { type: "button", onclick: () => act({ do: "say", who: this.who(), chat: chat.id, text }) }, text));
      }
    }
  }

  // A message that is new or has changed; who reads with the keyboard keeps their place.
  take(message, fresh) {
    const log = this.log;
    const old = log.querySelector(`[data-key="${message.key}"]`);
    const focused = old?.contains(document.activeElement) ? document.activeElement : null;
    const spot = focused ? [...old.querySelectorAll("button, a")].indexOf(focused) : -1;
    const drawn = this.drawIn(message);
    if (fresh) drawn.classList.add("fresh");
    if (old) old.replaceWith(drawn);
    else { log.querySelector(".empty")?.remove(); log.append(drawn); }
    if (spot >= 0) (drawn.querySelectorAll("button, a")[spot] || drawn.querySelector("button"))?.focus();
    if (this.following && !old) this.toEnd();
    this.drawKeys();
    const prompt = message.prompt;
    if (fresh && prompt?.force_reply && (!prompt.selective || message.reply?.from === this.who())) this.aim({ message, edit: false });
  }

  forget(key) { this.log.querySelector(`[data-key="${key}"]`)?.remove(); }

  // --- writing ---

  aim(target) {
    this.aimed = target;
    const line = this.form.querySelector(".aim");
    line.hidden = !target;
    if (!target) return;
    const text = target.message.text.slice(0, 60);
    line.firstElementChild.textContent = target.edit ? t("changing", { text }) : t("replying", { name: nameOf(target.message.from), text });
    if (target.edit) this.area.value = target.message.text;
    this.area.focus();
  }

  async send() {
    const text = this.area.value.trim();
    const chat = this.chat();
    if (!text || !chat) return;
    const target = this.aimed;
    const who = this.who();
    const here = target ? Number(target.message.key.split("/")[0]) : chat.id;
    const done = target?.edit
      ? await act({ do: "edit", who, chat: here, message: target.message.id, text })
      : await act({ do: "say", who, chat: chat.id, text, reply: target?.message.id });
    if (done) { this.area.value = ""; this.aim(null); this.area.focus(); }
  }

  fillMenus() {
    const commands = (store.menus[this.who()] || {})[this.group ? "group" : "private"] || [];
    const menu = this.form.querySelector(".menu");
    menu.replaceChildren(make("option", { value: "" }, t("commands")), ...commands.map((c) => make("option", { value: c.command }, `/${c.command} – ${c.description}`)));
    menu.setAttribute("aria-label", t("commands"));
    const send = this.form.querySelector(".send");
    send.replaceChildren(make("option", { value: "" }, t("send-else")), ...SENDS.map((what) => make("option", { value: what }, t(`send-${what}`))));
    send.setAttribute("aria-label", t("send-else"));
  }

  listenToForm() {
    const { form, area } = this;
    form.addEventListener("submit", (event) => { event.preventDefault(); this.send(); });
    area.addEventListener("keydown", (event) => {
      if (event.key === "Enter" && !event.shiftKey && !event.isComposing) { event.preventDefault(); this.send(); }
      if (event.key === "Escape") this.aim(null);
    });
    form.querySelector(".aim button").addEventListener("click", () => { this.aim(null); area.focus(); });
    form.querySelector(".menu").addEventListener("change", (event) => {
      if (event.target.value) { area.value = `/${event.target.value} `; area.focus(); }
      event.target.value = "";
    });
    form.querySelector(".send").addEventListener("change", (event) => {
      if (event.target.value) act({ do: "send", who: this.who(), chat: this.chat().id, what: event.target.value });
      event.target.value = "";
    });
    form.querySelector(".begin")?.addEventListener("click", () => act({ do: "start", who: this.who() }));
  }
}
